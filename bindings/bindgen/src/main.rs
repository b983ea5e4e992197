//! UniFFI's generator, at the very version that the library was built with.

fn main() {
    uniffi::uniffi_bindgen_main()
}
