//! What was typed behind a command: switches, and names with a value.

use anyhow::{Result, bail};

/// The options of one command, checked against those it knows.
#[derive(Debug, Default)]
pub struct Options {
    switches: Vec<String>,
    values: Vec<(String, String)>,
}

impl Options {
    /// Sorts what was typed into switches and values.
    ///
    /// # Errors
    /// An option the command does not know, or a value that is missing.
    pub fn parse(given: Vec<String>, switches: &[&str], values: &[&str]) -> Result<Self> {
        let mut options = Self::default();
        let mut given = given.into_iter();
        while let Some(word) = given.next() {
            let (name, inline) = match word.split_once('=') {
                Some((name, value)) => (name.to_owned(), Some(value.to_owned())),
                None => (word, None),
            };
            if switches.contains(&name.as_str()) && inline.is_none() {
                options.switches.push(name);
            } else if values.contains(&name.as_str()) {
                let Some(value) = inline.or_else(|| given.next()) else { bail!("`{name}` needs a value behind it") };
                options.values.push((name, value));
            } else {
                bail!("this command has no option `{name}`; it knows: {}", [switches, values].concat().join(", "));
            }
        }
        Ok(options)
    }

    /// Was the switch given?
    pub fn has(&self, switch: &str) -> bool {
        self.switches.iter().any(|s| s == switch)
    }

    /// The value given for a name, the last one where there are several.
    pub fn value(&self, name: &str) -> Option<&str> {
        self.values.iter().rev().find(|(n, _)| n == name).map(|(_, value)| value.as_str())
    }
}

#[cfg(test)]
mod tests {
    use super::Options;

    fn parse(line: &str) -> Result<Options, String> {
        Options::parse(line.split_whitespace().map(str::to_owned).collect(), &["--dev"], &["--port"]).map_err(|e| e.to_string())
    }

    #[test]
    fn reads_switches_and_values() {
        let options = parse("--dev --port 9000 --port=9001").unwrap();
        assert!(options.has("--dev"));
        assert_eq!(options.value("--port"), Some("9001"));
    }

    #[test]
    fn refuses_what_it_does_not_know() {
        assert_eq!(parse("--fast").unwrap_err(), "this command has no option `--fast`; it knows: --dev, --port");
        assert_eq!(parse("--port").unwrap_err(), "`--port` needs a value behind it");
    }
}
