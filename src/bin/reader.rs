//! Reads QR codes in a picture: a module of its own, which the page loads only where the browser has no
//! reader. It puts one function on the page's global object.

#[cfg(target_arch = "wasm32")]
fn main() {
    use js_sys::{global, Array, Reflect, Uint8Array};
    use wasm_bindgen::closure::Closure;
    use wasm_bindgen::JsValue;

    // Grey values row by row, and how many stand in a row; gives the texts of all codes.
    let read = Closure::<dyn Fn(Uint8Array, u32) -> Array>::new(|grey: Uint8Array, width: u32| {
        let (grey, width) = (grey.to_vec(), width as usize);
        let texts = texts_in(&grey, width);
        texts.into_iter().map(JsValue::from).collect::<Array>()
    });
    // Setting a property of the global object does not fail.
    let _ = Reflect::set(&global(), &"dutystandRead".into(), &read.into_js_value());
}

/// The texts of all codes in a picture.
#[cfg(target_arch = "wasm32")]
fn texts_in(grey: &[u8], width: usize) -> Vec<String> {
    let height = grey.len().checked_div(width).unwrap_or(0);
    // Less than the smallest code there is.
    if width < 21 || height < 21 {
        return Vec::new();
    }
    let at = |x: usize, y: usize| grey[y * width + x];
    let mut picture = rqrr::PreparedImage::prepare_from_greyscale(width, height, at);
    let grids = picture.detect_grids();
    let texts = grids.iter().filter_map(|grid| grid.decode().ok());
    texts.map(|(_, text)| text).collect()
}

#[cfg(not(target_arch = "wasm32"))]
fn main() {
    eprintln!("This program is a part of the page. Run the page with `sh tools/run`.");
    std::process::exit(2);
}
