//! Reading a picture: made small, and its brightness taken.

use std::sync::Arc;

use leptos::task::spawn_local;
use wasm_bindgen::JsCast;

use super::eye::{Eye, Seen};
use crate::app::photographs::picture;
use crate::questions::measure::counted::Grey;

/// Reads a file and shows it.
pub(super) fn read(eye: Eye, file: web_sys::File) {
    spawn_local(async move {
        let seen = match picture::canvas(&file).await {
            Some(canvas) => grey(&canvas).map(|grey| Seen { canvas, grey: Arc::new(grey) }),
            None => None,
        };
        match seen {
            Some(seen) => eye.show(seen),
            None => eye.refuse(format!(
                "“{}” is no picture that this browser can open. Choose a JPEG or PNG file, or photograph the gear anew.",
                file.name()
            )),
        }
    });
}

fn grey(canvas: &web_sys::HtmlCanvasElement) -> Option<Grey> {
    let paint: web_sys::CanvasRenderingContext2d = canvas.get_context("2d").ok()??.dyn_into().ok()?;
    let data = paint.get_image_data(0.0, 0.0, f64::from(canvas.width()), f64::from(canvas.height())).ok()?;
    Some(Grey::of_rgba(usize::try_from(canvas.width()).ok()?, &data.data()))
}
