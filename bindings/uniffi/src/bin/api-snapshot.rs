//! Writes the whole API as one text to read and to compare: `api-snapshot LIBRARY FILE`.
//!
//! It is made from what the compiled library says about itself to the generators of the other languages: every query,
//! command and formula, and every type, with its words. A change of the API is thus a change of a few lines of this text.

use std::collections::BTreeMap;

use uniffi_meta::{DefaultValueMetadata, FieldMetadata, LiteralMetadata, Metadata, MethodMetadata, Type};

const HEAD: &str = "\
The API: queries, commands, formulas and their types. Written by `cargo xtask generate`, never by hand.

Names are those of Rust and Python; JSON, Kotlin and Swift write them in camel case. `T?` may be absent. A field with
`= value` may be left out. Every query and command also takes the moment; a script that leaves it out means now.
";

/// The query that answers with a formula: its ask holds the list of formulas.
const FORMULA_QUERY: &str = "evaluate";

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let mut arguments = std::env::args().skip(1);
    let (Some(library), Some(file)) = (arguments.next(), arguments.next()) else {
        return Err("usage: api-snapshot LIBRARY FILE".into());
    };
    let known = uniffi_bindgen::macro_metadata::extract_from_bytes(&std::fs::read(library)?)?;
    Ok(std::fs::write(file, Api::of(known).text())?)
}

/// What the library says, in the order of the names.
#[derive(Default)]
struct Api {
    ways_in: BTreeMap<String, String>,
    queries: BTreeMap<String, String>,
    commands: BTreeMap<String, String>,
    formulas: String,
    records: BTreeMap<String, String>,
    enums: BTreeMap<String, String>,
}

impl Api {
    fn of(known: Vec<Metadata>) -> Self {
        let formulas = formula_list(&known);
        let inputs = formula_inputs(&known, formulas.as_deref());
        let mut api = Self::default();
        for item in known {
            match item {
                Metadata::Constructor(way) => {
                    let inputs: Vec<String> =
                        way.inputs.iter().map(|input| format!("{}: {}", input.name, name_of(&input.ty))).collect();
                    let call = format!("{}({})", way.name, inputs.join(", "));
                    api.ways_in.insert(way.name, with_words(&call, way.docstring.as_deref()));
                }
                Metadata::Method(method) => api.add_method(method),
                Metadata::Record(record) => {
                    let text = with_words(&record.name, record.docstring.as_deref()) + &fields(&record.fields, "    ");
                    if inputs.contains(&record.name) {
                        api.formulas.push_str(&text);
                    } else {
                        api.records.insert(record.name, text);
                    }
                }
                Metadata::Enum(choice) if formulas.as_ref() == Some(&choice.name) => {}
                Metadata::Enum(choice) => {
                    let cases = choice.variants.iter().map(|case| {
                        format!("    {}", with_words(&case.name, case.docstring.as_deref()))
                            + &fields(&case.fields, "        ")
                    });
                    let cases: String = cases.collect();
                    let text = with_words(&choice.name, choice.docstring.as_deref()) + &cases;
                    api.enums.insert(choice.name, text);
                }
                _ => {}
            }
        }
        api
    }

    /// A query answers with a sheet of its own; a command takes a payload that bears this name.
    fn add_method(&mut self, method: MethodMetadata) {
        let Some(input) = method.inputs.first() else { return };
        let (taken, given) = (name_of(&input.ty), method.return_type.as_ref().map_or_else(String::new, name_of));
        if input.name == "command" {
            let text = with_words(&format!("{}({taken})", method.name), method.docstring.as_deref());
            self.commands.insert(method.name, text);
        } else {
            let text = with_words(&format!("{}({taken}) -> {given}", method.name), method.docstring.as_deref());
            self.queries.insert(method.name, text);
        }
    }

    fn text(&self) -> String {
        let list = |entries: &BTreeMap<String, String>| -> String { entries.values().map(String::as_str).collect() };
        let sections = [
            ("Opening", list(&self.ways_in)),
            ("Queries", list(&self.queries)),
            ("Commands: each answers with Outcome", list(&self.commands)),
            ("Formulas: the query `evaluate` takes one of them", self.formulas.clone()),
            ("Records", list(&self.records)),
            ("Enumerations", list(&self.enums)),
        ];
        let sections = sections.map(|(title, entries)| format!("\n{title}\n{}\n{entries}", "=".repeat(title.len())));
        format!("{HEAD}{}", sections.concat())
    }
}

/// The records that the formulas take: each variant of the list holds one.
fn formula_inputs(known: &[Metadata], formulas: Option<&str>) -> Vec<String> {
    let list = known.iter().find_map(|item| match item {
        Metadata::Enum(choice) if Some(choice.name.as_str()) == formulas => Some(&choice.variants),
        _ => None,
    });
    list.into_iter().flatten().flat_map(|case| &case.fields).map(|field| name_of(&field.ty)).collect()
}

/// The name of the enumeration that lists the formulas: it is the one field of what the formula query takes.
fn formula_list(known: &[Metadata]) -> Option<String> {
    let ask = known.iter().find_map(|item| match item {
        Metadata::Method(method) if method.name == FORMULA_QUERY => method.inputs.first().map(|ask| name_of(&ask.ty)),
        _ => None,
    })?;
    known.iter().find_map(|item| match item {
        Metadata::Record(record) if record.name == ask => record.fields.first().map(|field| name_of(&field.ty)),
        _ => None,
    })
}

/// A line: the entry, then what its doc comment says.
fn with_words(entry: &str, words: Option<&str>) -> String {
    let words: Vec<&str> = words.unwrap_or_default().split_whitespace().collect();
    if words.is_empty() { format!("{entry}\n") } else { format!("{entry} - {}\n", words.join(" ")) }
}

fn fields(fields: &[FieldMetadata], margin: &str) -> String {
    let line = |field: &FieldMetadata| {
        let default = field.default.as_ref().map(|default| format!(" = {}", default_of(default, &field.ty)));
        let entry = format!("{}: {}{}", field.name, name_of(&field.ty), default.unwrap_or_default());
        format!("{margin}{}", with_words(&entry, field.docstring.as_deref()))
    };
    fields.iter().map(line).collect()
}

/// What stands for a field that is left out.
fn default_of(default: &DefaultValueMetadata, ty: &Type) -> String {
    match (default, ty) {
        (DefaultValueMetadata::Literal(LiteralMetadata::Boolean(value)), _) => value.to_string(),
        (DefaultValueMetadata::Literal(LiteralMetadata::None), _) | (_, Type::Optional { .. }) => "none".to_owned(),
        (DefaultValueMetadata::Literal(literal), _) => format!("{literal:?}"),
        (_, Type::Sequence { .. }) => "[]".to_owned(),
        (_, Type::Boolean) => "false".to_owned(),
        (_, Type::String) => "\"\"".to_owned(),
        (_, Type::Bytes) => "no bytes".to_owned(),
        (_, Type::Record { name, .. }) => format!("{name}()"),
        _ => "0".to_owned(),
    }
}

fn name_of(ty: &Type) -> String {
    match ty {
        Type::UInt8 => "u8".to_owned(),
        Type::Int8 => "i8".to_owned(),
        Type::UInt16 => "u16".to_owned(),
        Type::Int16 => "i16".to_owned(),
        Type::UInt32 => "u32".to_owned(),
        Type::Int32 => "i32".to_owned(),
        Type::UInt64 => "u64".to_owned(),
        Type::Int64 => "i64".to_owned(),
        Type::Float32 => "f32".to_owned(),
        Type::Float64 => "f64".to_owned(),
        Type::Boolean => "bool".to_owned(),
        Type::String => "text".to_owned(),
        Type::Bytes => "bytes".to_owned(),
        Type::Optional { inner_type } => format!("{}?", name_of(inner_type)),
        Type::Sequence { inner_type } => format!("[{}]", name_of(inner_type)),
        Type::Record { name, .. } | Type::Enum { name, .. } => name.clone(),
        Type::Custom { builtin, .. } => name_of(builtin),
        // The door has none of the others; one that comes is shown rather than left out.
        other => format!("{other:?}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn field(name: &str, ty: Type, default: Option<DefaultValueMetadata>) -> FieldMetadata {
        FieldMetadata { name: name.to_owned(), orig_name: None, ty, default, docstring: Some("Said\n so.".to_owned()) }
    }

    #[test]
    fn a_field_shows_its_type_its_default_and_its_words_in_one_line() {
        let teeth = Type::Optional { inner_type: Box::new(Type::UInt32) };
        let left_out = Some(DefaultValueMetadata::Default);
        let shown = fields(&[field("teeth", teeth, left_out), field("watts", Type::Float64, None)], "  ");
        assert_eq!(shown, "  teeth: u32? = none - Said so.\n  watts: f64 - Said so.\n");
    }
}
