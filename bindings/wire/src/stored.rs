//! The list of the fields of a stored type, read off the type itself.

use heck::ToLowerCamelCase as _;
use proc_macro2::TokenStream as Tokens;
use quote::{quote, quote_spanned};
use syn::spanned::Spanned;
use syn::{Data, DeriveInput, Field, Fields, Ident};

/// `impl Stored` for a type.
pub fn implementation(input: &DeriveInput) -> Tokens {
    let name = input.ident.clone();
    let fields: Vec<Tokens> = match &input.data {
        Data::Struct(data) => data.fields.iter().map(|field| entry(&name, field)).collect(),
        Data::Enum(data) => {
            let carries = data.variants.iter().any(|variant| !matches!(variant.fields, Fields::Unit));
            // serde tells the variants with data apart by a field of its own.
            let tag =
                carries.then(|| quote!(crate::changes::Field { name: "kind", words: "record-kind", within: &[] }));
            let of_variants =
                data.variants.iter().flat_map(|variant| variant.fields.iter().map(|field| entry(&name, field)));
            tag.into_iter().chain(of_variants).collect()
        }
        Data::Union(_) => Vec::new(),
    };
    quote! {
        impl crate::changes::Stored for #name {
            const FIELDS: &'static [crate::changes::Field] = &[#(#fields),*];
        }
    }
}

/// One field: its name as it is stored, the id of the message that names it, and what its own type holds.
fn entry(of_type: &Ident, field: &Field) -> Tokens {
    let name = field.ident.as_ref().map(|ident| ident.to_string().to_lower_camel_case()).unwrap_or_default();
    let words = format!("record-{}-{name}", of_type.to_string().to_lower_camel_case());
    let of = &field.ty;
    quote_spanned! { of.span() =>
        crate::changes::Field { name: #name, words: #words, within: <#of as crate::changes::Stored>::FIELDS }
    }
}
