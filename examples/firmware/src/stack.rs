//! How deep the stack went: painted before, looked at after.

const PAINT: u32 = 0x5AFE_57AC;
/// Left alone below the stack pointer of the one who paints, bytes.
const MARGIN: usize = 256;

unsafe extern "C" {
    /// Where the linker script ends what is not stack.
    static __sheap: u32;
}

fn here() -> usize {
    let mark = 0_u32;
    core::hint::black_box(&raw const mark) as usize
}

/// Most bytes of stack that `work` used below its caller, to a word.
pub fn depth<T>(work: impl FnOnce() -> T) -> (T, u32) {
    let top = here();
    // SAFETY: between the end of the statics and the stack pointer lies nothing that anyone uses.
    let bottom = &raw const __sheap as usize;
    let mut place = bottom;
    while place < top - MARGIN {
        unsafe { (place as *mut u32).write_volatile(PAINT) };
        place += 4;
    }
    let result = work();
    let mut place = bottom;
    // SAFETY: as above.
    while place < top && unsafe { (place as *const u32).read_volatile() } == PAINT {
        place += 4;
    }
    (result, (top - place) as u32)
}
