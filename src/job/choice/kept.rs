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
