//! Photos: scaled by the browser, one at a time. The full pixels never enter wasm.

use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, CanvasRenderingContext2d, HtmlCanvasElement, ImageBitmap};

/// The longest side of a kept photo, in pixels.
pub const LONGEST_SIDE: u32 = 1600;
/// The longest side of a thumbnail, in pixels.
pub const THUMBNAIL_SIDE: u32 = 240;
/// JPEG quality: by eye, no source.
const QUALITY: f64 = 0.8;

/// A picture drawn anew, so that nothing of the camera's metadata is left in it.
pub struct Scaled {
    /// JPEG bytes.
    pub jpeg: Vec<u8>,
    /// Pixels across.
    pub width: u32,
    /// Pixels down.
    pub height: u32,
}

/// A picture that the browser has decoded; its pixels go as soon as this does.
pub struct Picture(ImageBitmap);

impl Picture {
    /// Decodes a picture.
    ///
    /// # Errors
    /// A sentence when the browser cannot.
    pub async fn decode(picture: &Blob) -> Result<Self, String> {
        let window = web_sys::window().ok_or("there is no window")?;
        let decoding = window.create_image_bitmap_with_blob(picture).map_err(|error| super::message(&error))?;
        let decoded = JsFuture::from(decoding).await.map_err(|error| {
            let why = super::message(&error);
            format!("This file is no picture that the phone can read ({why}). A JPEG or PNG will do.")
        })?;
        Ok(Self(decoded.dyn_into().map_err(|_| "the browser gave no picture")?))
    }

    /// The picture with no side longer than `longest` pixels.
    ///
    /// # Errors
    /// A sentence when the browser cannot draw or encode it.
    pub async fn at_most(&self, longest: u32) -> Result<Scaled, String> {
        drawn(&self.0, longest).await.map_err(|error| super::message(&error))
    }
}

impl Drop for Picture {
    fn drop(&mut self) {
        self.0.close();
    }
}

async fn drawn(bitmap: &ImageBitmap, longest: u32) -> Result<Scaled, JsValue> {
    let (width, height) = fitted(bitmap.width(), bitmap.height(), longest);
    let document = web_sys::window().and_then(|window| window.document()).ok_or("there is no document")?;
    let canvas: HtmlCanvasElement = document.create_element("canvas")?.dyn_into()?;
    canvas.set_width(width);
    canvas.set_height(height);
    let context = canvas.get_context("2d")?.ok_or("the browser cannot draw")?;
    let context: CanvasRenderingContext2d = context.dyn_into()?;
    context.draw_image_with_image_bitmap_and_dw_and_dh(bitmap, 0.0, 0.0, f64::from(width), f64::from(height))?;
    let jpeg = encoded(&canvas).await?;
    // Some browsers free a canvas late; an empty one holds nothing.
    canvas.set_width(0);
    canvas.set_height(0);
    Ok(Scaled { jpeg, width, height })
}

async fn encoded(canvas: &HtmlCanvasElement) -> Result<Vec<u8>, JsValue> {
    let mut started = Ok(());
    let encoding = js_sys::Promise::new(&mut |resolve, reject| {
        let done = Closure::once_into_js(move |blob: JsValue| {
            let answer = if blob.is_null() {
                reject.call1(&JsValue::NULL, &"the picture was not encoded".into())
            } else {
                resolve.call1(&JsValue::NULL, &blob)
            };
            drop(answer);
        });
        started = canvas.to_blob_with_type_and_encoder_options(done.unchecked_ref(), "image/jpeg", &QUALITY.into());
    });
    started?;
    let blob: Blob = JsFuture::from(encoding).await?.dyn_into()?;
    let buffer = JsFuture::from(blob.array_buffer()).await?;
    Ok(js_sys::Uint8Array::new(&buffer).to_vec())
}

/// The size with the longest side held to `longest`, never enlarged and never nothing.
fn fitted(width: u32, height: u32, longest: u32) -> (u32, u32) {
    let most = width.max(height).max(1);
    if most <= longest {
        return (width.max(1), height.max(1));
    }
    let scaled =
        |side: u32| u32::try_from(u64::from(side) * u64::from(longest) / u64::from(most)).unwrap_or(longest).max(1);
    (scaled(width), scaled(height))
}
