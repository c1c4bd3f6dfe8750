//! A gear set by its cluster, drawn beside its name; whoever listens hears its counts anyway.

use leptos::prelude::*;

use crate::catalogue::Entry;
use crate::sheet::silhouette::{HEIGHT, Silhouette};

/// The cluster of a gear set; nothing of any other part, and where its teeth are not all counted.
pub fn shape(entry: &Entry) -> Option<impl IntoView + use<>> {
    let Silhouette { path, width } = Silhouette::of(&entry.gearbox()?)?;
    Some(view! {
        <svg class="shape" width=width height=HEIGHT viewBox=format!("0 0 {width} {HEIGHT}") aria-hidden="true"><path d=path/></svg>
    })
}
