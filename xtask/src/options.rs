//! The options of the command line: read once, checked against what each command takes.

use crate::command::{Failure, Outcome};

/// What was given after the command's name.
#[derive(Default)]
pub struct Options {
    pub desktop: bool,
    pub check: bool,
    pub list: bool,
    pub port: Option<u16>,
    pub only: Vec<String>,
    /// What `bench plan` hands on: the folder, then its own options.
    pub plan: Option<Vec<String>>,
    given: Vec<String>,
}

impl Options {
    pub fn read(mut arguments: impl Iterator<Item = String>) -> Outcome<Self> {
        let mut options = Self::default();
        while let Some(argument) = arguments.next() {
            match argument.as_str() {
                "--desktop" => options.desktop = true,
                "--check" => options.check = true,
                "--list" => options.list = true,
                "--port" => options.port = Some(port(arguments.next())?),
                "--only" => {
                    options.only.push(arguments.next().ok_or(Failure::new("--only wants the name of a stage"))?)
                }
                "plan" => options.plan = Some(arguments.by_ref().collect()),
                other => return Err(Failure(format!("There is no option `{other}`."))),
            }
            options.given.push(argument);
        }
        Ok(options)
    }

    /// Refuses an option that the command would silently ignore.
    pub fn only_these(&self, allowed: &[&str]) -> Outcome {
        match self.given.iter().find(|given| !allowed.contains(&given.as_str())) {
            Some(stray) => Err(Failure(format!("This command does not take `{stray}`."))),
            None => Ok(()),
        }
    }
}

fn port(text: Option<String>) -> Outcome<u16> {
    let text = text.unwrap_or_default();
    text.parse().map_err(|_| Failure(format!("--port wants a number from 0 to 65535, not `{text}`")))
}

#[cfg(test)]
mod tests {
    use super::Options;

    fn read(words: &[&str]) -> Result<Options, String> {
        Options::read(words.iter().map(|word| (*word).to_owned())).map_err(|failure| failure.0)
    }

    #[test]
    fn a_port_out_of_range_is_refused_with_the_range() {
        let refusal = read(&["--port", "65536"]).err().unwrap_or_default();
        assert!(refusal.contains("0 to 65535") && refusal.contains("65536"), "{refusal}");
    }

    #[test]
    fn an_option_of_another_command_is_refused() {
        let options = read(&["--check"]).unwrap_or_default();
        assert!(options.only_these(&["--port"]).is_err());
        assert!(options.only_these(&["--check"]).is_ok());
    }
}
