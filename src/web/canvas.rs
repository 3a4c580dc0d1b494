//! Pictures on a canvas.

use wasm_bindgen::{Clamped, JsValue};
use web_sys::{CanvasRenderingContext2d, ImageData};

/// Puts grey values, row 0 at the top, on a canvas, which takes their size. `pixels` is scratch.
pub(super) fn put_grey(
    canvas: &CanvasRenderingContext2d,
    pixels: &mut Vec<u8>,
    grey: &[u8],
    size: usize,
) -> Result<(), JsValue> {
    pixels.resize(4 * grey.len(), u8::MAX);
    for (pixel, &g) in pixels.chunks_exact_mut(4).zip(grey) {
        pixel.copy_from_slice(&[g, g, g, u8::MAX]);
    }
    if let Some(element) = canvas.canvas()
        && element.width() != size as u32
    {
        element.set_width(size as u32);
        element.set_height(size as u32);
    }
    let image = ImageData::new_with_u8_clamped_array_and_sh(Clamped(pixels), size as u32, size as u32)?;
    canvas.put_image_data(&image, 0.0, 0.0)
}
