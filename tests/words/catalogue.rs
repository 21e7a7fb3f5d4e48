//! The English words of the core, and which arguments each of them uses.

use std::collections::{BTreeMap, BTreeSet};

use fluent_syntax::ast::{Entry, Expression, InlineExpression, Message, Pattern, PatternElement};
use fluent_syntax::parser::parse;

/// The arguments that a message of the catalogue uses, those that choose a form apart.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Used {
    /// Printed.
    pub shown: BTreeSet<String>,
    /// Chosen by.
    pub chosen: BTreeSet<String>,
}

impl Used {
    fn pattern(&mut self, pattern: &Pattern<&str>) {
        for element in &pattern.elements {
            let PatternElement::Placeable { expression } = element else { continue };
            match expression {
                Expression::Inline(expression) => self.inline(expression),
                Expression::Select { selector, variants } => {
                    if let InlineExpression::VariableReference { id } = selector {
                        self.chosen.insert(id.name.to_owned());
                    } else {
                        self.inline(selector);
                    }
                    variants.iter().for_each(|variant| self.pattern(&variant.value));
                }
            }
        }
    }

    fn inline(&mut self, expression: &InlineExpression<&str>) {
        match expression {
            InlineExpression::VariableReference { id } => {
                self.shown.insert(id.name.to_owned());
            }
            InlineExpression::FunctionReference { arguments, .. } => {
                arguments.positional.iter().for_each(|argument| self.inline(argument));
            }
            InlineExpression::Placeable { expression } => {
                if let Expression::Inline(expression) = expression.as_ref() {
                    self.inline(expression);
                }
            }
            _ => {}
        }
    }
}

/// The messages of the English files with what they use. An error names the file that cannot be read, or the id that stands twice.
pub fn english() -> Result<BTreeMap<String, Used>, String> {
    let mut all = BTreeMap::new();
    for (file, text) in layshaft_words::files(layshaft_words::ENGLISH) {
        let resource = parse(*text).map_err(|(_, errors)| format!("{file}: {errors:?}"))?;
        for entry in &resource.body {
            let Entry::Message(Message { id, value: Some(value), .. }) = entry else { continue };
            let mut used = Used::default();
            used.pattern(value);
            if all.insert(id.name.to_owned(), used).is_some() {
                return Err(format!("{file}: {} stands twice", id.name));
            }
        }
    }
    Ok(all)
}
