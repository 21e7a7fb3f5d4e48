//! An enum whose variants are messages of the catalogue: ids from their names, arguments from their fields.

use heck::{ToKebabCase as _, ToLowerCamelCase as _};
use proc_macro2::TokenStream as Tokens;
use quote::{format_ident, quote};
use syn::{Data, DeriveInput, Error, Fields, LitStr, Variant};

/// The enum itself, its way into a `Message`, and the list of what it declares.
pub fn implementation(prefix: &LitStr, input: &DeriveInput) -> Tokens {
    let Data::Enum(data) = &input.data else {
        return Error::new_spanned(&input.ident, "#[message] is for an enum: one variant a message").to_compile_error();
    };
    let name = &input.ident;
    let arms: Vec<Tokens> = data.variants.iter().map(|variant| arm(prefix, name, variant)).collect();
    let declared: Vec<Tokens> = data.variants.iter().map(|variant| declaration(prefix, variant)).collect();
    quote! {
        #[derive(Clone, Debug, PartialEq)]
        #input

        impl From<#name> for ::layshaft_core::message::Message {
            fn from(said: #name) -> Self {
                match said { #(#arms)* }
            }
        }

        impl #name {
            /// What this enum declares.
            pub(crate) const DECLARED: &'static [::layshaft_core::message::Declared] = &[#(#declared),*];
        }
    }
}

fn id(prefix: &LitStr, variant: &Variant) -> String {
    format!("{}-{}", prefix.value(), variant.ident.to_string().to_kebab_case())
}

/// `Name::Variant { a, b } => Message::new(id, vec![a.argument().named("a"), …])`.
fn arm(prefix: &LitStr, name: &syn::Ident, variant: &Variant) -> Tokens {
    let (id, ident) = (id(prefix, variant), &variant.ident);
    let idents: Vec<_> = variant.fields.iter().filter_map(|field| field.ident.as_ref()).collect();
    let names = idents.iter().map(|ident| ident.to_string().to_lower_camel_case());
    match &variant.fields {
        Fields::Unit | Fields::Named(_) => quote! {
            #name::#ident { #(#idents),* } => ::layshaft_core::message::Message::new(
                #id,
                vec![#(::layshaft_core::message::IntoArgument::argument(#idents).named(#names)),*],
            ),
        },
        Fields::Unnamed(fields) => Error::new_spanned(fields, "an argument of a message has a name").to_compile_error(),
    }
}

fn declaration(prefix: &LitStr, variant: &Variant) -> Tokens {
    let id = id(prefix, variant);
    let arguments = variant.fields.iter().map(|field| {
        let ident = field.ident.clone().unwrap_or_else(|| format_ident!("unnamed"));
        let (name, of) = (ident.to_string().to_lower_camel_case(), &field.ty);
        quote!((#name, <#of as ::layshaft_core::message::IntoArgument>::KIND))
    });
    quote!(::layshaft_core::message::Declared { id: #id, arguments: &[#(#arguments),*] })
}
