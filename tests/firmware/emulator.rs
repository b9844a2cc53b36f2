//! Builds a program of the firmware package and runs it.

use std::path::{Path, PathBuf};
use std::process::{Command, Output};

/// Where the built programs are; none outside `tests/firmware.sh`.
pub fn built() -> Option<PathBuf> {
    let built = std::env::var_os("JETWRIGHT_FIRMWARE").map(PathBuf::from);
    if built.is_none() {
        println!("skipped: `bash tests/firmware.sh` builds the firmware and the emulator's part of the tests");
    }
    built
}

/// A directory of one test, empty at its start.
pub fn directory(name: &str) -> PathBuf {
    let path = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    let _ = std::fs::remove_dir_all(&path);
    std::fs::create_dir_all(&path).expect("a directory for the test");
    path
}

fn text(output: &Output) -> String {
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    String::from_utf8(output.stdout.clone()).expect("answers are UTF-8")
}

/// What the command of the host answers.
pub fn jetwright(arguments: &[&str]) -> String {
    text(&Command::new(env!("CARGO_BIN_EXE_jetwright")).args(arguments).output().expect("the command starts"))
}

/// The heats its table is made for: the largest fire of a burner file whose air can be set, and eight tenths of it.
pub fn heats(burner_file: &Path) -> [f64; 2] {
    let sheet = jetwright(&["sheet", burner_file.to_str().expect("a path of text"), "--format", "json"]);
    let sheet: serde_json::Value = serde_json::from_str(&sheet).expect("JSON");
    let set = sheet["settings"].as_array().expect("settings").iter();
    let heats = set.filter(|setting| setting["too_much_air"] == false && setting["air_shortfall_pa"].is_null());
    let highest = heats.filter_map(|setting| setting["heat_net_w"].as_f64()).fold(0.0, f64::max);
    [0.8 * highest, highest]
}

/// A chip, and how a program is built for it.
#[derive(Clone, Copy, Debug)]
pub struct Chip {
    target: &'static str,
    profile: &'static str,
    /// The emulator's board of it.
    board: &'static [&'static str],
}

impl Chip {
    /// Whether it is [`M4F`].
    pub fn is_usual(self) -> bool {
        (self.target, self.profile) == (M4F.target, M4F.profile)
    }
}

/// The usual one.
pub const M4F: Chip = Chip {
    target: "thumbv7em-none-eabihf",
    profile: "release",
    board: &["-cpu", "cortex-m4", "-machine", "mps2-an386"],
};
/// The same with less flash used.
pub const M4F_SMALL: Chip = Chip { profile: "small", ..M4F };
/// One without a floating-point unit.
pub const M0: Chip = Chip { target: "thumbv6m-none-eabi", profile: "release", board: &["-machine", "microbit"] };

/// Builds one program for a burner file, and gives it.
pub fn build(built: &Path, burner_file: &Path, directory: &Path, program: &str) -> PathBuf {
    build_for(M4F, built, burner_file, directory, program)
}

/// The same for a chip.
pub fn build_for(chip: Chip, built: &Path, burner_file: &Path, directory: &Path, program: &str) -> PathBuf {
    let path = |name: &str| directory.join(name).to_str().expect("a path of text").to_owned();
    let (file, burner, table) = (burner_file.to_str().expect("a path of text"), path("burner.bin"), path("table.bin"));
    jetwright(&["chip", file, "--image", &burner]);
    let [lowest, highest] = heats(burner_file).map(|watts| format!("{watts} W net"));
    jetwright(&["setpoints", file, "--from", &lowest, "--to", &highest, "--image", &table]);
    let script = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/firmware.sh");
    let output = Command::new("bash")
        .args([script, "build", "--target", chip.target, "--profile", chip.profile, "--bin", program])
        .env("BURNER_IMAGE", burner)
        .env("TABLE_IMAGE", table)
        .output()
        .expect("bash starts");
    text(&output);
    built.join(chip.target).join(chip.profile).join(program)
}

/// Runs a program in a directory, whose files it may read and write, and gives its text.
pub fn run(program: &Path, directory: &Path) -> String {
    run_on(M4F, program, directory)
}

/// The same on a chip.
pub fn run_on(chip: Chip, program: &Path, directory: &Path) -> String {
    let (well, printed) = ran(chip, program, directory);
    assert!(well, "{printed}");
    printed
}

/// Runs a program, and gives whether it ended well, and its text.
pub fn ran(chip: Chip, program: &Path, directory: &Path) -> (bool, String) {
    let output = Command::new("qemu-system-arm")
        .args(chip.board)
        .args(["-nographic", "-icount", "shift=0,sleep=off"])
        .args(["-semihosting-config", "enable=on,target=native", "-kernel"])
        .arg(program)
        .current_dir(directory)
        .output()
        .expect("the emulator starts");
    // The program's text comes on either, by where the emulator was started.
    let printed = [output.stdout, output.stderr].concat();
    let printed = String::from_utf8(printed).expect("answers are UTF-8");
    (output.status.success(), printed)
}
