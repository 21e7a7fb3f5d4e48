//! The list of the fields of a stored type, read off the type itself.

use heck::ToLowerCamelCase as _;
use proc_macro2::TokenStream as Tokens;
use quote::{quote, quote_spanned};
use syn::spanned::Spanned;
use syn::{Data, DeriveInput, Field, Fields, LitStr};

/// `impl Stored` for a type. Takes the `#[words]` of its fields away, which nobody else would understand.
pub fn implementation(input: &mut DeriveInput) -> Tokens {
    let name = input.ident.clone();
    let fields: Vec<Tokens> = match &mut input.data {
        Data::Struct(data) => data.fields.iter_mut().map(entry).collect(),
        Data::Enum(data) => {
            let carries = data.variants.iter().any(|variant| !matches!(variant.fields, Fields::Unit));
            // serde tells the variants with data apart by a field of its own.
            let tag = carries.then(|| quote!(crate::changes::Field { name: "kind", words: "Kind", within: &[] }));
            let of_variants = data.variants.iter_mut().flat_map(|variant| variant.fields.iter_mut().map(entry));
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

/// One field: its name as it is stored, its words, and what its own type holds.
fn entry(field: &mut Field) -> Tokens {
    let words = match taken_words(field) {
        Ok(words) => words,
        Err(error) => return error,
    };
    let name = field.ident.as_ref().map(|ident| ident.to_string().to_lower_camel_case()).unwrap_or_default();
    let of = &field.ty;
    quote_spanned! { of.span() =>
        crate::changes::Field { name: #name, words: #words, within: <#of as crate::changes::Stored>::FIELDS }
    }
}

fn taken_words(field: &mut Field) -> Result<LitStr, Tokens> {
    let at = field.attrs.iter().position(|attribute| attribute.path().is_ident("words"));
    let span = field.span();
    match at.map(|at| field.attrs.remove(at).parse_args::<LitStr>()) {
        Some(Ok(words)) => Ok(words),
        Some(Err(error)) => Err(error.to_compile_error()),
        None => {
            let reason = "a stored field says how a reader sees it named: #[words(\"Gearbox sprocket\")]";
            Err(quote_spanned!(span => compile_error!(#reason)))
        }
    }
}
