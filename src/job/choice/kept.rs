//! How a choice stands in a file: as its word.

use serde::{Deserialize, Deserializer, Serialize, Serializer};

use super::Chosen;

impl<T> Serialize for Chosen<T> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(&self.word)
    }
}

impl<'de, T> Deserialize<'de> for Chosen<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        String::deserialize(deserializer).map(|word| Self::read(&word))
    }
}

/// The words it may be: nothing, or one of the options.
#[cfg(not(target_arch = "wasm32"))]
impl<T: super::Options> schemars::JsonSchema for Chosen<T> {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Chosen".into()
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        let words = T::LISTED.iter().map(|(word, _)| *word).filter(|word| !word.is_empty());
        schemars::json_schema!({ "enum": std::iter::once("").chain(words).collect::<Vec<_>>() })
    }
}
