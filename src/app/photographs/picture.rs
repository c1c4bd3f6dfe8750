//! A picture made small: decoded, turned as the camera says, scaled down and packed as JPEG, by the browser's own means.

use js_sys::Promise;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;

use crate::job::photographs::scaled;

/// How finely it is packed, of 1: the marks of a scriber are still seen.
const QUALITY: f64 = 0.8;

/// A file as a picture, scaled down; none where it is none.
pub(in crate::app) async fn canvas(file: &web_sys::Blob) -> Option<web_sys::HtmlCanvasElement> {
    let window = web_sys::window()?;
    let bitmap = JsFuture::from(window.create_image_bitmap_with_blob(file).ok()?).await.ok()?;
    let bitmap: web_sys::ImageBitmap = bitmap.dyn_into().ok()?;
    let (width, height) = scaled(bitmap.width(), bitmap.height());
    let canvas: web_sys::HtmlCanvasElement = window.document()?.create_element("canvas").ok()?.dyn_into().ok()?;
    canvas.set_width(width);
    canvas.set_height(height);
    let paint: web_sys::CanvasRenderingContext2d = canvas.get_context("2d").ok()??.dyn_into().ok()?;
    let (width, height) = (f64::from(width), f64::from(height));
    // A JPEG file knows nothing that is seen through.
    paint.set_fill_style_str("#fff");
    paint.fill_rect(0.0, 0.0, width, height);
    paint.draw_image_with_image_bitmap_and_dw_and_dh(&bitmap, 0.0, 0.0, width, height).ok()?;
    Some(canvas)
}

/// A file as a photograph that is kept; none where it is no picture.
pub(super) async fn jpeg(file: &web_sys::Blob) -> Option<web_sys::Blob> {
    let canvas = canvas(file).await?;
    let packed = Promise::new(&mut |give, _| {
        if canvas.to_blob_with_type_and_encoder_options(&give, "image/jpeg", &QUALITY.into()).is_err() {
            let _ = give.call0(&JsValue::NULL);
        }
    });
    JsFuture::from(packed).await.ok()?.dyn_into().ok()
}

pub(super) async fn bytes(picture: &web_sys::Blob) -> Option<Vec<u8>> {
    let bytes = JsFuture::from(picture.array_buffer()).await.ok()?;
    Some(js_sys::Uint8Array::new(&bytes).to_vec())
}

pub(super) fn of_bytes(bytes: &[u8]) -> Option<web_sys::Blob> {
    let options = web_sys::BlobPropertyBag::new();
    options.set_type("image/jpeg");
    let parts = js_sys::Array::of1(&js_sys::Uint8Array::from(bytes));
    web_sys::Blob::new_with_u8_array_sequence_and_options(&parts, &options).ok()
}
