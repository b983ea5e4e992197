//! wasm-bindgen's generator, at the very version that the library was built with:
//! `web-bindgen LIBRARY FOLDER`.

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let [library, folder] = args.as_slice() else { return Err("LIBRARY FOLDER".into()) };
    wasm_bindgen_cli_support::Bindgen::new()
        .input_path(library)
        .out_name("engine")
        .web(true)?
        .typescript(true)
        .remove_name_section(true)
        .remove_producers_section(true)
        .generate(folder)?;
    Ok(())
}
