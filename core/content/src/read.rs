//! TOML as JSON, field by field as its kind says. Whatever is not as it should be is named with its line.

use std::collections::BTreeSet;
use std::path::Path;

use serde_json::{Map, Number, Value};
use toml::Spanned;
use toml::de::{DeTable, DeValue};

use crate::part::{Field, Part};
use crate::problem::{Problem, Written};

/// One node of a parsed file, with its place.
type Node<'a> = Spanned<DeValue<'a>>;

/// Any TOML file as JSON text, for data that has no texts to translate.
pub fn plain(path: &Path) -> Result<String, Problem> {
    let text = std::fs::read_to_string(path).map_err(Problem::file(path))?;
    let file = Written { path, text: &text };
    Ok(Value::Object(file.data_of(file.parsed()?.get_ref())?).to_string())
}

impl Written<'_> {
    /// The file as tables.
    pub(crate) fn parsed(&self) -> Result<Spanned<DeTable<'_>>, Problem> {
        DeTable::parse(self.text)
            .map_err(|error| self.problem(error.span().map_or(0, |span| span.start), error.message().trim()))
    }

    /// The file as its kind says.
    pub(crate) fn shaped(&self, fields: &[Field]) -> Result<Value, Problem> {
        let table = self.parsed()?;
        self.table(fields, table.get_ref(), 0)
    }

    fn table(&self, fields: &[Field], table: &DeTable<'_>, at: usize) -> Result<Value, Problem> {
        for name in table.keys() {
            if !fields.iter().any(|field| field.name == name.get_ref()) {
                return Err(self.problem(name.span().start, format!("there is no field `{}` here", name.get_ref())));
            }
        }
        let mut read = Map::new();
        for Field { name, part, needed } in fields {
            match table.get(*name) {
                Some(value) => _ = read.insert((*name).to_owned(), self.part(part, value)?),
                None if *needed => return Err(self.problem(at, format!("the field `{name}` is missing"))),
                None => {}
            }
        }
        Ok(Value::Object(read))
    }

    fn part(&self, part: &Part, node: &Node<'_>) -> Result<Value, Problem> {
        match part {
            Part::Data => self.data(node),
            Part::Text | Part::Word => self.text(node),
            Part::Words => self.list(node)?.iter().map(|word| self.text(word)).collect(),
            Part::Table(fields) => self.table(fields, self.fields(node)?, node.span().start),
            Part::List(fields) => {
                let items = self.list(node)?;
                self.told_apart(items.iter().filter_map(|item| item.get_ref().get("id")))?;
                let item = |item: &&Node<'_>| self.table(fields, self.fields(item)?, item.span().start);
                items.iter().map(item).collect()
            }
            Part::Pairs => {
                let pairs = self.list(node)?;
                self.told_apart(pairs.iter().filter_map(|pair| pair.get_ref().get(0)))?;
                pairs.iter().map(|pair| self.pair(pair)).collect()
            }
            Part::Names => {
                let texts = self.fields(node)?.iter().map(|(id, text)| {
                    self.id(id.get_ref(), id.span().start)?;
                    Ok((id.get_ref().to_string(), self.text(text)?))
                });
                texts.collect::<Result<Map<_, _>, _>>().map(Value::Object)
            }
        }
    }

    /// A number, word, list or table of which nothing is translated.
    fn data(&self, node: &Node<'_>) -> Result<Value, Problem> {
        let number = |number: Option<Number>| {
            let reason = "this number cannot be used; write it as digits";
            number.map(Value::Number).ok_or_else(|| self.problem(node.span().start, reason))
        };
        match node.get_ref() {
            DeValue::String(text) => Ok(Value::String(text.to_string())),
            DeValue::Boolean(flag) => Ok(Value::Bool(*flag)),
            DeValue::Integer(whole) => {
                number(i64::from_str_radix(whole.as_str(), whole.radix()).ok().map(Number::from))
            }
            DeValue::Float(real) => number(real.as_str().parse().ok().and_then(Number::from_f64)),
            DeValue::Datetime(_) => Err(self.problem(node.span().start, "a date is written in quotes")),
            DeValue::Array(list) => list.iter().map(|value| self.data(value)).collect(),
            DeValue::Table(table) => self.data_of(table).map(Value::Object),
        }
    }

    fn data_of(&self, table: &DeTable<'_>) -> Result<Map<String, Value>, Problem> {
        table.iter().map(|(name, value)| Ok((name.get_ref().to_string(), self.data(value)?))).collect()
    }

    pub(crate) fn text(&self, node: &Node<'_>) -> Result<Value, Problem> {
        match node.get_ref().as_str() {
            Some(text) if !text.is_empty() && text.trim() == text => Ok(Value::String(text.to_owned())),
            Some(_) => Err(self.problem(node.span().start, "a text says something and has no spaces around it")),
            None => Err(self.problem(node.span().start, "a text is expected here")),
        }
    }

    /// An id with the text for it.
    fn pair(&self, node: &Node<'_>) -> Result<Value, Problem> {
        match self.list(node)?.as_slice() {
            [id, text] => Ok(Value::Array(vec![self.data(id)?, self.text(text)?])),
            _ => Err(self.problem(node.span().start, "a pair of an id and a text is expected here")),
        }
    }

    fn list<'a, 'b>(&self, node: &'a Node<'b>) -> Result<Vec<&'a Node<'b>>, Problem> {
        let list = node.get_ref().as_array().map(|list| list.iter().collect());
        list.ok_or_else(|| self.problem(node.span().start, "a list is expected here"))
    }

    fn fields<'a, 'b>(&self, node: &'a Node<'b>) -> Result<&'a DeTable<'b>, Problem> {
        node.get_ref().as_table().ok_or_else(|| self.problem(node.span().start, "a table is expected here"))
    }

    /// Ids of one list: each can stand in a key, and none stands twice.
    fn told_apart<'a, 'b: 'a>(&self, ids: impl Iterator<Item = &'a Node<'b>>) -> Result<(), Problem> {
        let mut seen = BTreeSet::new();
        for node in ids {
            let id = node.get_ref().as_str().unwrap_or_default();
            self.id(id, node.span().start)?;
            if !seen.insert(id) {
                return Err(self.problem(node.span().start, format!("the id `{id}` stands here twice")));
            }
        }
        Ok(())
    }

    fn id(&self, id: &str, at: usize) -> Result<(), Problem> {
        let may_stand = |sign: char| sign.is_ascii_lowercase() || sign.is_ascii_digit() || ".- ".contains(sign);
        if !id.is_empty() && id.chars().all(may_stand) {
            return Ok(());
        }
        Err(self
            .problem(at, format!("the id `{id}` may hold only lower-case letters, digits, dots, hyphens and spaces")))
    }
}
