//! The `#[wire]` attribute: everything a type needs to cross the door, said once.
//!
//! A type marked with it is the domain type *and* the shape that the browser, Python, Kotlin and Swift see. The
//! attribute expands to serde derives and, behind the features `ts` and `uniffi` of the crate that uses it, to the
//! derives of those two. There is no second declaration of the type anywhere.
//!
//! - A struct becomes a JSON object with camelCase fields; an optional field may be left out.
//! - An enum without data becomes a camelCase string; with data it becomes an object tagged by `kind`.
//! - `#[wire(lenient)]` on a struct also lets every field be left out (its default stands in): for records that an
//!   older or newer program may have written with fewer fields.
//! - `#[wire(stored)]` marks a type of the core that is kept in a record, as the record itself or inside a field: it also
//!   implements `Stored`, the list of its fields. What a reader sees is the message `record-<type>-<field>` of the catalogue:
//!   `record-drive-frontTeeth`.
//! - `#[message("chain")]` marks an enum of the core whose variants are messages of the catalogue: `TooSlack { slack }` is the
//!   message `chain-too-slack` with the argument `slack`.
//! - `#[wire(default)]` on a field lets a script leave that one out: for what has one safe meaning when it is not said,
//!   such as `false`. Never for a value of the trade: what nobody said is unknown.

mod message;
mod stored;

use proc_macro::TokenStream;
use proc_macro2::TokenStream as Tokens;
use quote::quote;
use syn::{Data, DataEnum, DeriveInput, Fields, Type, parse_macro_input, parse_quote};

/// Marks a type that crosses the door. See the crate's documentation.
#[proc_macro_attribute]
pub fn wire(attribute: TokenStream, item: TokenStream) -> TokenStream {
    let said = attribute.to_string();
    let said: Vec<&str> = said.split(',').map(str::trim).filter(|word| !word.is_empty()).collect();
    if let Some(word) = said.iter().find(|word| !["lenient", "stored"].contains(*word)) {
        let reason = format!("#[wire] knows `lenient` and `stored`, not `{word}`");
        return quote!(compile_error!(#reason);).into();
    }
    let lenient = said.contains(&"lenient");
    let mut input = parse_macro_input!(item as DeriveInput);
    let stored = if said.contains(&"stored") { stored::implementation(&input) } else { Tokens::new() };
    let serde = match &mut input.data {
        Data::Enum(data) => enum_rules(data),
        Data::Struct(data) => {
            data.fields.iter_mut().for_each(let_be_left_out);
            if lenient {
                quote!(#[derive(Default)] #[serde(rename_all = "camelCase", default)])
            } else {
                quote!(#[serde(rename_all = "camelCase")])
            }
        }
        Data::Union(_) => Tokens::new(),
    };
    let named = match &input.data {
        Data::Enum(data) => wire_names(&input.ident, data),
        _ => Tokens::new(),
    };
    let uniffi = if matches!(input.data, Data::Enum(_)) { quote!(uniffi::Enum) } else { quote!(uniffi::Record) };
    let optional =
        if matches!(input.data, Data::Enum(_)) { Tokens::new() } else { quote!(, optional_fields = nullable) };
    quote! {
        #[derive(Clone, Debug, PartialEq, ::serde::Serialize, ::serde::Deserialize)]
        #serde
        #[cfg_attr(feature = "ts", derive(ts_rs::TS), ts(export_to = "door.ts" #optional))]
        #[cfg_attr(feature = "uniffi", derive(#uniffi))]
        #input
        #named
        #stored
    }
    .into()
}

/// Marks an enum whose variants are messages of the catalogue. See the crate's documentation.
#[proc_macro_attribute]
pub fn message(prefix: TokenStream, item: TokenStream) -> TokenStream {
    let prefix = parse_macro_input!(prefix as syn::LitStr);
    let input = parse_macro_input!(item as DeriveInput);
    message::implementation(&prefix, &input).into()
}

/// What the names of an enum without data are at the door, for whoever makes an id or an argument of them.
fn wire_names(name: &syn::Ident, data: &DataEnum) -> Tokens {
    let renamed =
        data.variants.iter().flat_map(|variant| &variant.attrs).any(|attribute| attribute.path().is_ident("serde"));
    // Variants with names of their own have them listed where they stand.
    if renamed || !is_plain(data) {
        return Tokens::new();
    }
    let idents = data.variants.iter().map(|variant| &variant.ident);
    let names = data.variants.iter().map(|variant| camel_case(&variant.ident.to_string()));
    quote! {
        impl #name {
            /// Its name as it crosses the door.
            pub const fn wire_name(self) -> &'static str {
                match self { #(Self::#idents => #names,)* }
            }
        }
    }
}

/// As serde's `camelCase` writes a variant: the first letter small, the rest as it is.
fn camel_case(variant: &str) -> String {
    let mut name = variant.to_owned();
    name.get_mut(..1).into_iter().for_each(str::make_ascii_lowercase);
    name
}

fn is_plain(data: &DataEnum) -> bool {
    data.variants.iter().all(|variant| matches!(variant.fields, Fields::Unit))
}

/// How serde writes an enum: a word when no variant carries data, else an object with a `kind`.
fn enum_rules(data: &mut DataEnum) -> Tokens {
    if is_plain(data) {
        return quote!(#[derive(Copy, Eq, PartialOrd, Ord, Hash)] #[serde(rename_all = "camelCase")]);
    }
    quote!(#[serde(tag = "kind", rename_all = "camelCase", rename_all_fields = "camelCase")])
}

/// Lets optional fields, lists and those marked with `#[wire(default)]` be left out in JSON, Python, Kotlin and Swift.
fn let_be_left_out(field: &mut syn::Field) {
    let marks = field.attrs.len();
    field.attrs.retain(|mark| !says_default(mark));
    let marked = field.attrs.len() < marks;
    let outer = match &field.ty {
        Type::Path(path) => path.path.segments.last().map(|segment| segment.ident.to_string()),
        _ => None,
    };
    if marked || matches!(outer.as_deref(), Some("Option" | "Vec")) {
        field.attrs.push(parse_quote!(#[serde(default)]));
        field.attrs.push(parse_quote!(#[cfg_attr(feature = "uniffi", uniffi(default))]));
    }
}

fn says_default(mark: &syn::Attribute) -> bool {
    mark.path().is_ident("wire") && mark.parse_args::<syn::Ident>().is_ok_and(|word| word == "default")
}
