//! Lets the linker of the page leave in what the build tool needs to cut it into parts.

fn main() {
    println!("cargo:rerun-if-changed=build.rs");
    if std::env::var("CARGO_CFG_TARGET_ARCH").is_ok_and(|arch| arch == "wasm32") {
        println!("cargo:rustc-link-arg-bin=dutystand=--emit-relocs");
    }
}
