//! Talking to the debugger or emulator through semihosting: text out, files in and out. No `core::fmt`, which alone
//! would be larger than the physics.

use cortex_m_semihosting::{nr, syscall, syscall1};

/// A text of the program's own, ended by a zero byte.
pub fn text(text: &core::ffi::CStr) {
    // SAFETY: the host reads up to the zero byte that every CStr has.
    unsafe { syscall1(nr::WRITE0, text.as_ptr() as usize) };
}

/// One byte of text.
pub fn byte(byte: u8) {
    // SAFETY: the host reads the one byte.
    unsafe { syscall1(nr::WRITEC, &raw const byte as usize) };
}

/// A whole number.
pub fn number(number: u32) {
    let mut power = 1;
    while number / power >= 10 {
        power *= 10;
    }
    while power > 0 {
        byte(b'0' + (number / power % 10) as u8);
        power /= 10;
    }
}

/// A number with three digits after the point; no number is a question mark.
pub fn thousandths(value: f32) {
    let rounded = value * 1000.0 + 0.5;
    if !(rounded >= 0.0 && rounded < 4e9) {
        return byte(b'?');
    }
    let whole = rounded as u32;
    number(whole / 1000);
    byte(b'.');
    for power in [100, 10, 1] {
        byte(b'0' + (whole / power % 10) as u8);
    }
}

/// A file of the host.
pub struct File(usize);

impl File {
    /// Opens a file to read, or makes it anew to write; none when the host will not.
    pub fn open(name: &core::ffi::CStr, write: bool) -> Option<Self> {
        let mode = if write { 5 } else { 1 };
        // SAFETY: the name is as long as said and ends in a zero byte.
        let handle = unsafe { syscall!(OPEN, name.as_ptr(), mode, name.count_bytes()) };
        (handle != usize::MAX).then_some(Self(handle))
    }

    /// Fills the bytes; false when the file ends before.
    pub fn fill(&self, bytes: &mut [u8]) -> bool {
        // SAFETY: the host writes no more than the bytes' length.
        unsafe { syscall!(READ, self.0, bytes.as_mut_ptr(), bytes.len()) == 0 }
    }

    /// The next number; none at the end.
    pub fn word(&self) -> Option<[u8; 4]> {
        let mut word = [0; 4];
        self.fill(&mut word).then_some(word)
    }

    /// Appends bytes.
    pub fn put(&self, bytes: &[u8]) {
        // SAFETY: the host reads no more than the bytes' length.
        unsafe { syscall!(WRITE, self.0, bytes.as_ptr(), bytes.len()) };
    }
}

/// Ends the emulator, well or not.
pub fn exit(well: bool) -> ! {
    let reason = if well { 0x2_0026 } else { 0x2_0023 };
    loop {
        // SAFETY: takes no memory.
        unsafe { syscall1(nr::REPORT_EXCEPTION, reason) };
    }
}

/// Does nothing for ever.
pub fn stop() -> ! {
    loop {
        core::hint::spin_loop();
    }
}
