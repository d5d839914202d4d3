//! The camera, and pictures somebody picked, as far as codes in them are concerned.
//!
//! The browser's own reader of codes is taken where there is one; else a module of ours is loaded, which
//! was kept with the page, so that nothing is asked of a network. Pictures never leave the page, and none
//! is kept.

use app::machine::CameraTrouble;
use js_sys::{Array, Function, Promise, Reflect, Uint8Array};
use std::cell::RefCell;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{CanvasRenderingContext2d, HtmlCanvasElement, HtmlVideoElement, ImageBitmap};

use super::reach::{error_name, error_words, method, of_navigator, options, property, window};
use super::share::PickedFile;

/// Pixels along the longer side of what is looked at: codes of ours have up to 105 fields along a side,
/// and a reader wants some four pixels a field where a code fills half the picture. Our own choice.
const LONGEST: f64 = 960.0;
/// The same for a photo, on which a code may be small.
const LONGEST_PHOTO: f64 = 1920.0;

/// A camera that is on. It goes off with this value.
pub struct Camera {
    stream: JsValue,
    video: HtmlVideoElement,
    reader: Reader,
}

impl Drop for Camera {
    fn drop(&mut self) {
        stop(&self.stream);
        self.video.set_src_object(None);
    }
}

impl Camera {
    /// Switches the camera at the back on and shows it in `video`.
    ///
    /// # Errors
    /// Why it cannot be had.
    pub async fn open(video: &HtmlVideoElement) -> Result<Camera, CameraTrouble> {
        let devices = of_navigator("mediaDevices").ok_or(CameraTrouble::NoCamera)?;
        let ask = method(&devices, "getUserMedia").ok_or(CameraTrouble::NoCamera)?;
        let ideal = |value: JsValue| options(&[("ideal", value)]);
        let wanted = options(&[
            ("facingMode", ideal("environment".into())),
            ("width", ideal(1280.into())),
            ("height", ideal(720.into())),
        ]);
        let wanted = options(&[("video", wanted), ("audio", JsValue::FALSE)]);
        let asked = ask.call1(&devices, &wanted).map_err(|e| why(&e))?;
        let stream = wait(asked).await.map_err(|e| why(&e))?;
        // From here on whatever fails switches it off again.
        let camera = Camera {
            stream,
            video: video.clone(),
            reader: Reader::load().await?,
        };
        video.set_src_object(Some(camera.stream.unchecked_ref()));
        let playing = video.play().map_err(|e| failed(&e))?;
        JsFuture::from(playing).await.map_err(|e| failed(&e))?;
        Ok(camera)
    }

    /// The texts of the codes that it sees now.
    ///
    /// # Errors
    /// Where a picture cannot be looked at.
    pub async fn look(&self) -> Result<Vec<String>, CameraTrouble> {
        let (width, height) = (self.video.video_width(), self.video.video_height());
        // The first picture is not there yet.
        if width == 0 || height == 0 {
            return Ok(Vec::new());
        }
        let size = (f64::from(width), f64::from(height));
        self.reader.read(&self.video, size, LONGEST).await
    }
}

/// The texts of the codes in a picture that somebody picked.
///
/// # Errors
/// Where it is no picture, or cannot be looked at.
pub async fn codes_in_photo(file: &PickedFile) -> Result<Vec<String>, CameraTrouble> {
    let reader = Reader::load().await?;
    let window = window().ok_or(CameraTrouble::NoCamera)?;
    let bitmap = window
        .create_image_bitmap_with_blob(file.blob())
        .map_err(|e| failed(&e))?;
    let bitmap: ImageBitmap = wait(bitmap.into())
        .await
        .map_err(|e| failed(&e))?
        .unchecked_into();
    let size = (f64::from(bitmap.width()), f64::from(bitmap.height()));
    reader.read(&bitmap, size, LONGEST_PHOTO).await
}

/// Whoever finds the codes: the browser as long as it can, else our own module.
struct Reader {
    native: RefCell<Option<JsValue>>,
}

thread_local! {
    /// Where pictures are looked at, made once.
    static CANVAS: RefCell<Option<HtmlCanvasElement>> = const { RefCell::new(None) };
}

impl Reader {
    async fn load() -> Result<Reader, CameraTrouble> {
        let native = native().await;
        if native.is_none() {
            // Now, while the person waits for the camera anyway.
            ours().await?;
        }
        Ok(Reader {
            native: RefCell::new(native),
        })
    }

    async fn read(
        &self,
        picture: &JsValue,
        size: (f64, f64),
        longest: f64,
    ) -> Result<Vec<String>, CameraTrouble> {
        let native = self.native.borrow().clone();
        if let Some(detector) = native {
            match detect(&detector, picture).await {
                Ok(texts) => return Ok(texts),
                // Some promise to read codes and cannot: where a part of the system is missing.
                Err(_) => drop(self.native.take()),
            }
        }
        let read = ours().await?;
        let (grey, width) = grey(picture, size, longest)?;
        let grey = Uint8Array::from(grey.as_slice());
        let found = read
            .call2(&JsValue::UNDEFINED, &grey, &width.into())
            .map_err(|e| failed(&e))?;
        Ok(Array::from(&found)
            .iter()
            .filter_map(|t| t.as_string())
            .collect())
    }
}

/// Asks the browser's own reader.
async fn detect(detector: &JsValue, picture: &JsValue) -> Result<Vec<String>, JsValue> {
    let detect = method(detector, "detect").ok_or(JsValue::UNDEFINED)?;
    let found = wait(detect.call1(detector, picture)?).await?;
    let texts = Array::from(&found);
    let texts = texts.iter();
    Ok(texts
        .filter_map(|c| property(&c, "rawValue")?.as_string())
        .collect())
}

/// Our own reader; its module is loaded when it is first asked for.
async fn ours() -> Result<Function, CameraTrouble> {
    let global = js_sys::global();
    if let Some(read) = method(&global, "dutystandRead") {
        return Ok(read);
    }
    let no_reader = || CameraTrouble::Failed(String::new());
    // The page's loader knows where the module lies.
    let open = method(&global, "dutystandReader").ok_or_else(no_reader)?;
    let opening = open.call0(&global).map_err(|e| failed(&e))?;
    wait(opening).await.map_err(|e| failed(&e))?;
    method(&global, "dutystandRead").ok_or_else(no_reader)
}

/// The browser's own reader, where it knows these codes.
async fn native() -> Option<JsValue> {
    let class: Function = property(&js_sys::global(), "BarcodeDetector")?
        .dyn_into()
        .ok()?;
    let formats = method(&class, "getSupportedFormats")?.call0(&class).ok()?;
    let formats = Array::from(&wait(formats).await.ok()?);
    let qr = JsValue::from("qr_code");
    if !formats.includes(&qr, 0) {
        return None;
    }
    let wanted = options(&[("formats", Array::of1(&qr).into())]);
    Reflect::construct(&class, &Array::of1(&wanted)).ok()
}

/// A picture in grey, row by row, and how many values stand in a row.
fn grey(
    picture: &JsValue,
    size: (f64, f64),
    longest: f64,
) -> Result<(Vec<u8>, u32), CameraTrouble> {
    let scale = (longest / size.0.max(size.1)).min(1.0);
    let (width, height) = ((size.0 * scale).floor(), (size.1 * scale).floor());
    let canvas = canvas().ok_or_else(|| CameraTrouble::Failed(String::new()))?;
    // Both are whole and at most `longest`.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    let (columns, rows) = (width as u32, height as u32);
    if canvas.width() != columns || canvas.height() != rows {
        canvas.set_width(columns);
        canvas.set_height(rows);
    }
    let often = options(&[("willReadFrequently", JsValue::TRUE)]);
    let context: CanvasRenderingContext2d = canvas
        .get_context_with_context_options("2d", &often)
        .ok()
        .flatten()
        .ok_or_else(|| CameraTrouble::Failed(String::new()))?
        .unchecked_into();
    // One function for videos and bitmaps alike.
    let draw = method(&context, "drawImage").ok_or_else(|| CameraTrouble::Failed(String::new()))?;
    let place = [
        picture.clone(),
        0.into(),
        0.into(),
        width.into(),
        height.into(),
    ];
    draw.apply(&context, &place.into_iter().collect::<Array>())
        .map_err(|e| failed(&e))?;
    let data = context
        .get_image_data(0.0, 0.0, width, height)
        .map_err(|e| failed(&e))?;
    let pixels = data.data().0;
    // Brightness as eyes see it (ITU-R BT.601), in 256ths.
    let bright =
        |p: &[u8]| (77 * u32::from(p[0]) + 150 * u32::from(p[1]) + 29 * u32::from(p[2])) >> 8;
    #[allow(clippy::cast_possible_truncation)] // At most 255.
    let grey = pixels.chunks_exact(4).map(|p| bright(p) as u8).collect();
    Ok((grey, columns))
}

fn canvas() -> Option<HtmlCanvasElement> {
    CANVAS.with_borrow_mut(|kept| {
        if kept.is_none() {
            let made = window()?.document()?.create_element("canvas").ok()?;
            *kept = Some(made.unchecked_into());
        }
        kept.clone()
    })
}

fn stop(stream: &JsValue) {
    let tracks = method(stream, "getTracks").and_then(|tracks| tracks.call0(stream).ok());
    for track in tracks.map(|t| Array::from(&t)).unwrap_or_default() {
        // A track that is over cannot be stopped, and need not be.
        let _ = method(&track, "stop").map(|stop| stop.call0(&track));
    }
}

async fn wait(promise: JsValue) -> Result<JsValue, JsValue> {
    JsFuture::from(Promise::resolve(&promise)).await
}

fn why(thrown: &JsValue) -> CameraTrouble {
    match error_name(thrown).as_str() {
        "NotAllowedError" | "SecurityError" => CameraTrouble::Refused,
        "NotFoundError" | "OverconstrainedError" => CameraTrouble::NoCamera,
        _ => failed(thrown),
    }
}

fn failed(thrown: &JsValue) -> CameraTrouble {
    CameraTrouble::Failed(error_words(thrown))
}
