//! The C interface: its header is current, and a program in C gets the numbers of Rust.

#![cfg(feature = "capi")]

mod chip;
mod expected;
mod host;
mod invented;
mod precision;
mod refused;
mod sketch;

use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

const HEADER: &str = "examples/c/src/jetwright.h";

const OPENING: &str =
    "/* Gas and air of a forced-air burner. Process control, NEVER a flame safeguard: a listed one stays in
 * charge of the gas valve. Made by cbindgen from src/capi/; change it there. Pointers are null or point at
 * what their type says, and no two of one call at the same thing.
 *
 * Interrupts and threads: a struct is used by one call at a time. A tick that interrupts another on the same
 * controller answers JETWRIGHT_STATUS_BUSY and asks for no gas; nothing else is guarded. Different structs are
 * independent: the library keeps nothing of its own. Nothing here allocates, waits or calls back.
 *
 * Stack: at most JETWRIGHT_STACK_MOST bytes for any call, as measured on a Cortex-M4. */";

/// What the preprocessor says: the version, whose results must be used, and the sizes that are checked.
fn after_includes() -> String {
    let version = env!("CARGO_PKG_VERSION");
    let [major, minor, patch] = version.split('.').collect::<Vec<_>>()[..] else { panic!("{version}") };
    format!(
        "
#define JETWRIGHT_VERSION \"{version}\"
#define JETWRIGHT_VERSION_MAJOR {major}
#define JETWRIGHT_VERSION_MINOR {minor}
#define JETWRIGHT_VERSION_PATCH {patch}

#if defined(__GNUC__) || defined(__clang__)
#define JETWRIGHT_MUST_USE __attribute__((warn_unused_result))
#else
#define JETWRIGHT_MUST_USE
#endif

/* Bytes of stack. */
#define JETWRIGHT_STACK_MOST {}

#define JETWRIGHT_BYTES                                                                      \\
    (sizeof(JetwrightController) + 2 * sizeof(JetwrightTable) + 3 * sizeof(JetwrightBurner) \\
     + 4 * sizeof(JetwrightCrossLimit) + 5 * sizeof(JetwrightAirChanges)                     \\
     + 6 * sizeof(JetwrightTotals) + 7 * sizeof(JetwrightInputs)                             \\
     + 8 * sizeof(JetwrightOutputs) + 9 * sizeof(JetwrightControllerSettings)                \\
     + 10 * sizeof(JetwrightCrossLimitSettings) + 11 * sizeof(JetwrightRecord)               \\
     + 12 * sizeof(JetwrightHazards))

/* Whether the library is the one of this header: call it first. */
#define JETWRIGHT_CHECK_ABI() jetwright_check_abi(JETWRIGHT_ABI, JETWRIGHT_BYTES)
",
        chip::STACK_MOST
    )
}

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

fn run(command: &mut Command) -> Output {
    let output = command.output().unwrap_or_else(|error| panic!("{command:?}: {error}"));
    let text = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "{command:?}: {text}");
    output
}

/// The static library, built as a user builds it, in a target directory of its own.
fn static_library() -> PathBuf {
    let directory = Path::new(env!("CARGO_TARGET_TMPDIR")).join("c_interface/target");
    let cargo = std::env::var_os("CARGO").unwrap_or("cargo".into());
    run(Command::new(cargo)
        .current_dir(root())
        .args(["rustc", "--quiet", "--lib", "--features", "capi", "--crate-type", "staticlib", "--target-dir"])
        .arg(&directory));
    directory.join("debug/libjetwright.a")
}

#[test]
fn the_header_is_what_cbindgen_makes_of_the_source() {
    let config = cbindgen::Config {
        language: cbindgen::Language::C,
        cpp_compat: true,
        include_guard: Some("JETWRIGHT_H".into()),
        header: Some(OPENING.into()),
        after_includes: Some(after_includes()),
        usize_is_size_t: true,
        documentation_style: cbindgen::DocumentationStyle::C,
        line_length: 110,
        enumeration: cbindgen::EnumConfig {
            rename_variants: cbindgen::RenameRule::QualifiedScreamingSnakeCase,
            ..Default::default()
        },
        // A chip's compiler need bring no more.
        no_includes: true,
        sys_includes: ["stdbool.h", "stddef.h", "stdint.h"].map(String::from).to_vec(),
        function: cbindgen::FunctionConfig { must_use: Some("JETWRIGHT_MUST_USE".into()), ..Default::default() },
        // Numbers come from C, where any can stand in an enumeration: these are named in no signature.
        export: cbindgen::ExportConfig {
            include: [
                "JetwrightGas",
                "JetwrightEdge",
                "JetwrightBasis",
                "JetwrightCommand",
                "JetwrightHazardKind",
                "JetwrightSeverity",
            ]
            .map(String::from)
            .to_vec(),
            ..Default::default()
        },
        ..Default::default()
    };
    // It reads what this file names as its modules.
    let builder = cbindgen::Builder::new().with_config(config).with_src(root().join("src/capi/mod.rs"));
    let mut made = Vec::new();
    builder.generate().expect("cbindgen reads the source").write(&mut made);
    let made = String::from_utf8(made).unwrap();
    let path = root().join(HEADER);
    if std::env::var_os("JETWRIGHT_WRITE_PAGE").is_some() {
        fs::write(&path, &made).unwrap();
    }
    let kept = fs::read_to_string(&path).unwrap_or_default();
    assert!(
        kept == made,
        "{HEADER} is out of date: JETWRIGHT_WRITE_PAGE=1 cargo test --features capi --test c_interface"
    );
}

#[test]
fn the_header_declares_each_function_once() {
    let directory = Path::new(env!("CARGO_TARGET_TMPDIR")).join("c_header");
    fs::create_dir_all(&directory).unwrap();
    let compiler = std::env::var_os("CC").unwrap_or("cc".into());
    run(Command::new(compiler)
        .args(["-std=c99", "-Wall", "-Wextra", "-Werror", "-pedantic", "-Wredundant-decls", "-x", "c", "-c"])
        .arg(root().join(HEADER))
        .arg("-o")
        .arg(directory.join("header.o")));
}

#[test]
fn the_library_folder_says_the_version_of_the_crate() {
    let properties = fs::read_to_string(root().join("examples/c/library.properties")).unwrap();
    let version = format!("version={}", env!("CARGO_PKG_VERSION"));
    assert!(properties.lines().any(|line| line == version), "{properties}");
}
