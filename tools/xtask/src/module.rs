//! From the compiler's output to what a browser loads: the module and its glue.

use wasm_bindgen_cli_support::Bindgen;
use wasmparser::{Validator, WasmFeatures};

use crate::compile::Build;
use crate::Outcome;

/// A WebAssembly module and the script that connects it to the page.
pub struct Module {
    /// The script, an ES module.
    pub glue: String,
    /// The module.
    pub wasm: Vec<u8>,
}

/// What Safari 16.4 and Chrome 108 both understand and the compiler switches on by itself
/// (support tables: MDN browser-compat-data, 2026-08-07). Anything more locks phones out.
fn allowed() -> WasmFeatures {
    WasmFeatures::MVP
        | WasmFeatures::MUTABLE_GLOBAL
        | WasmFeatures::SATURATING_FLOAT_TO_INT
        | WasmFeatures::SIGN_EXTENSION
        | WasmFeatures::REFERENCE_TYPES
        | WasmFeatures::MULTI_VALUE
        | WasmFeatures::BULK_MEMORY
}

/// Makes the glue for a compiled binary.
pub fn bind(compiled: Vec<u8>, name: &str, build: Build) -> Outcome<Module> {
    let published = build == Build::Release;
    let trouble = |trouble: &dyn std::fmt::Display| {
        format!("The glue for {name} could not be made: {trouble}.")
    };
    let mut output = Bindgen::new()
        .input_bytes(name, compiled)
        .web(true)
        .map_err(|e| trouble(&e))?
        .typescript(false)
        // The other parts of the page share what the linker exports, by the linker's names.
        .keep_lld_exports(true)
        .demangle(false)
        // A quick build keeps function names, so that a panic can be read.
        .remove_name_section(published)
        .remove_producers_section(published)
        .generate_output()
        .map_err(|e| trouble(&e))?;
    if output
        .snippets()
        .values()
        .any(|scripts| !scripts.is_empty())
        || !output.local_modules().is_empty()
    {
        return Err(format!(
            "{name} brings script files of its own; the page has no place for them."
        ));
    }
    // The lines come indented by where their parts were made.
    let glue = output
        .js()
        .lines()
        .map(str::trim_start)
        .collect::<Vec<_>>()
        .join("\n");
    let wasm = output.wasm_mut().emit_wasm();
    understood(&wasm).map_err(|e| too_new(name, &e))?;
    Ok(Module { glue, wasm })
}

/// What to say of a module that they cannot run.
pub fn too_new(name: &str, trouble: &wasmparser::BinaryReaderError) -> String {
    format!("{name} needs more than the oldest supported browsers have: {trouble}.")
}

/// Says whether the oldest supported browsers can run a module.
pub fn understood(wasm: &[u8]) -> Result<(), wasmparser::BinaryReaderError> {
    Validator::new_with_features(allowed())
        .validate_all(wasm)
        .map(|_| ())
}

#[cfg(test)]
mod tests {
    use super::understood;

    /// Header, one function type `() -> ()`, one function, and its body.
    fn with_body(body: &[u8]) -> Vec<u8> {
        let mut wasm = b"\0asm\x01\0\0\0\x01\x04\x01\x60\0\0\x03\x02\x01\0".to_vec();
        let length = u8::try_from(body.len()).unwrap();
        wasm.extend([10, length + 2, 1, length]);
        wasm.extend(body);
        wasm
    }

    #[test]
    fn what_old_phones_know_passes() {
        // i32.const 0, i32.extend8_s (sign-ext), drop
        understood(&with_body(&[0, 0x41, 0, 0xc0, 0x1a, 0x0b])).unwrap();
    }

    #[test]
    fn a_tail_call_is_refused() {
        // return_call 0
        assert!(understood(&with_body(&[0, 0x12, 0, 0x0b])).is_err());
    }

    #[test]
    fn a_vector_instruction_is_refused() {
        // v128.const 0, drop
        let mut body = vec![0, 0xfd, 0x0c];
        body.extend([0; 16]);
        body.extend([0x1a, 0x0b]);
        assert!(understood(&with_body(&body)).is_err());
    }

    #[test]
    fn a_typed_function_reference_is_refused() {
        // ref.func 0, ref.as_non_null, drop
        assert!(understood(&with_body(&[0, 0xd0, 0x70, 0xd4, 0x1a, 0x0b])).is_err());
    }
}
