//! The C library for chips: linked with every function for each, and the C example run with it in the emulator.
//! `tests/bare_metal.sh` builds the libraries and runs these; without it there is nothing to run.

#[path = "../firmware/elf.rs"]
mod elf;

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use super::host::{Line, compare, write_images};
use super::{HEADER, root, run};

/// Bytes of stack that the header says suffice for any call.
pub const STACK_MOST: u32 = 12_288;

/// The three targets, and what the linker calls their processors.
const TARGETS: [(&str, &str); 3] = [
    ("thumbv7em-none-eabihf", "armelf"),
    ("thumbv6m-none-eabi", "armelf"),
    ("riscv32imc-unknown-none-elf", "elf32lriscv"),
];
/// Those that the emulator runs: a board of it, and what the compiler is told of its processor.
const BOARDS: [(&str, &str, &[&str]); 2] = [
    ("thumbv7em-none-eabihf", "mps2-an386", &["-mcpu=cortex-m4", "-mfpu=fpv4-sp-d16", "-mfloat-abi=hard"]),
    ("thumbv6m-none-eabi", "microbit", &["-mcpu=cortex-m0"]),
];
const WARNINGS: [&str; 6] = ["-std=c99", "-Wall", "-Wextra", "-Werror", "-pedantic", "-Wdouble-promotion"];

fn libraries() -> Option<PathBuf> {
    let found = std::env::var_os("JETWRIGHT_CHIP_LIBRARIES").map(PathBuf::from);
    if found.is_none() {
        println!("skipped: `bash tests/bare_metal.sh` builds the libraries");
    }
    found
}

fn library(of: &Path, target: &str) -> PathBuf {
    of.join(target).join("release/libjetwright.a")
}

fn directory(name: &str) -> PathBuf {
    let path = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    fs::create_dir_all(&path).unwrap();
    path
}

/// The functions of the header.
fn functions() -> Vec<String> {
    let header = fs::read_to_string(root().join(HEADER)).unwrap();
    let named = header.lines().filter(|line| line.contains("jetwright_") && line.contains('('));
    named
        .map(|line| {
            let from = &line[line.find("jetwright_").unwrap()..];
            from[..from.find('(').unwrap()].to_owned()
        })
        .collect()
}

/// Everything that the functions need, and nothing else.
fn linked(of: &Path, (target, processor): (&str, &str), functions: &[String]) -> elf::Program {
    let program = directory("chip_linked").join(target);
    run(Command::new("ld.lld")
        .args(["-m", processor, "--gc-sections", "--entry", &functions[0]])
        .args(functions.iter().flat_map(|function| ["-u", function]))
        .arg(library(of, target))
        .arg("-o")
        .arg(&program));
    elf::read(&program)
}

#[test]
fn a_chip_links_no_double_precision_helper_and_no_panic() {
    let Some(libraries) = libraries() else { return };
    let mut functions = functions();
    assert!(functions.len() > 20, "{functions:?}");
    for target in TARGETS {
        let program = linked(&libraries, target, &functions);
        for function in &functions {
            assert!(program.symbols.contains(function), "{function} for {target:?}");
        }
        assert_eq!(double_arithmetic(&program), Vec::<String>::new(), "{target:?}");
        let panics: Vec<_> = program.symbols.iter().filter(|symbol| symbol.contains("panic")).collect();
        assert!(panics.is_empty(), "{panics:?} for {target:?}");
        assert_eq!(program.ram(), 0, "nothing is kept but what C gives");
        if target == TARGETS[0] {
            states("flash of the C library with every function, bytes", program.flash());
        }
    }
    // The search finds one that is there.
    functions.push("__muldf3".into());
    assert!(!linked(&libraries, TARGETS[2], &functions).double_precision_helpers().is_empty());
}

/// Helpers that calculate in double precision. One that only narrows a number to single is none: how near a gas is to
/// condensing is taken from the rows of its species, which are kept in double precision.
fn double_arithmetic(program: &elf::Program) -> Vec<String> {
    let narrows = ["__aeabi_d2f", "__truncdfsf2"];
    program.double_precision_helpers().into_iter().filter(|name| !narrows.contains(&name.as_str())).cloned().collect()
}

/// A row of the firmware README's table is within a tenth of what is measured.
fn states(row: &str, measured: u32) {
    let readme = fs::read_to_string(root().join("examples/firmware/README.md")).unwrap();
    let found = readme.lines().find_map(|line| line.strip_prefix("| ")?.strip_prefix(row)?.strip_prefix(" | "));
    let stated = found.and_then(|rest| rest.split(" |").next()?.replace(' ', "").parse::<f64>().ok());
    let stated = stated.unwrap_or_else(|| panic!("no row '{row}': {measured} measured"));
    let measured = f64::from(measured);
    println!("| {row} | {measured} |");
    assert!((stated - measured).abs() <= 0.1 * measured, "{row}: stated {stated}, measured {measured}");
}

/// What the example's program tells on a board, and how deep its stack went.
fn told(of: &Path, (target, board, processor): (&str, &str, &[&str])) -> (Vec<Line>, u32) {
    let directory = directory(&format!("chip_{board}"));
    write_images(&directory);
    let here = root().join("tests/c_interface");
    let sources = [root().join("examples/c/extras/calls.c"), here.join("chip.c")];
    let objects: Vec<PathBuf> = ["calls.o", "chip.o"].iter().map(|name| directory.join(name)).collect();
    for (source, object) in sources.iter().zip(&objects) {
        run(Command::new("clang")
            .arg(format!("--target={target}"))
            .args(processor)
            .args(WARNINGS)
            .args(["-Os", "-ffreestanding", "-I"])
            .arg(root().join("examples/c/src"))
            .arg("-I")
            .arg(root().join("examples/c/extras"))
            .arg("-c")
            .arg(source)
            .arg("-o")
            .arg(object));
    }
    run(Command::new("ld.lld")
        .args(["--gc-sections", "-T"])
        .arg(here.join("chip.ld"))
        .args(&objects)
        .arg(library(of, target))
        .args(["-o", "chip"])
        .current_dir(&directory));
    assert_eq!(double_arithmetic(&elf::read(&directory.join("chip"))), Vec::<String>::new());
    let output = Command::new("qemu-system-arm")
        .args(["-machine", board, "-nographic", "-semihosting-config", "enable=on,target=native", "-kernel", "chip"])
        .current_dir(&directory)
        .output()
        .unwrap();
    // The program's text comes on either, by where the emulator was started.
    let text = String::from_utf8([output.stdout, output.stderr].concat()).unwrap();
    assert!(output.status.success(), "{text}");
    let word = |word: &str| u32::from_str_radix(word, 16).unwrap_or_else(|_| panic!("{word} in {text}"));
    let mut lines = text.lines().map(|line| line.split_whitespace().collect::<Vec<_>>()).collect::<Vec<_>>();
    let last = lines.pop().unwrap();
    assert_eq!(last[0], "stack");
    let number = |text: &&str| f64::from(f32::from_bits(word(text)));
    let lines = lines.iter().map(|line| (line[0].to_owned(), line[1..].iter().map(number).collect())).collect();
    (lines, word(last[1]))
}

#[test]
fn the_example_on_a_chip_gets_the_numbers_of_the_host() {
    let Some(libraries) = libraries() else { return };
    for board in BOARDS {
        let (lines, stack) = told(&libraries, board);
        compare(&lines);
        if board == BOARDS[0] {
            assert!(stack <= STACK_MOST, "{stack}");
            states("stack of a call from C, bytes at most", stack);
        }
    }
}
