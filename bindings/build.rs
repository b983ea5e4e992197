//! How the shared library is linked: its relocations packed, which are 150 kB of it otherwise.

fn main() {
    println!("cargo::rerun-if-changed=build.rs");
    let of = std::env::var("CARGO_CFG_TARGET_OS").unwrap_or_default();
    let small = std::env::var("OPT_LEVEL").is_ok_and(|level| level == "z");
    // Android reads its own form since API 23. On Linux, where what ships is only measured and tried,
    // glibc reads the common one since 2.36.
    let packed = match of.as_str() {
        "android" => "-Wl,--pack-dyn-relocs=android",
        "linux" if small => "-Wl,-z,pack-relative-relocs",
        _ => return,
    };
    println!("cargo::rustc-link-arg-cdylib={packed}");
}
