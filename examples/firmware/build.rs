//! Hands the linker the board's memory, and says which of the emulator's boards it is.

use std::{env, fs, path::PathBuf};

fn main() {
    let out = PathBuf::from(env::var_os("OUT_DIR").expect("cargo sets OUT_DIR"));
    fs::write(out.join("memory.x"), include_bytes!("memory.x")).expect("OUT_DIR can be written");
    println!("cargo:rustc-link-search={}", out.display());
    println!("cargo:rustc-link-arg=-Tlink.x");
    println!("cargo:rerun-if-changed=memory.x");
    println!("cargo:rustc-check-cfg=cfg(board, values(\"mps2\", \"microbit\"))");
    let board = if env::var("TARGET").is_ok_and(|target| target.starts_with("thumbv6m")) { "microbit" } else { "mps2" };
    println!("cargo:rustc-cfg=board=\"{board}\"");
    for image in ["BURNER_IMAGE", "TABLE_IMAGE"] {
        println!("cargo:rerun-if-env-changed={image}");
        // What a program needs it says itself; a path that the compiler would look for beside the source is told here.
        let Some(path) = env::var_os(image).map(PathBuf::from) else { continue };
        if !path.is_absolute() || !path.is_file() {
            eprintln!("set {image} to the full path of a file: {} is none", path.display());
            std::process::exit(1);
        }
        println!("cargo:rerun-if-changed={}", path.display());
    }
}
