//! How deep the stack went: painted before, looked at after.

const PAINT: u32 = 0x5AFE_57AC;
/// Left alone below the stack pointer of the one who paints, bytes: an interrupt's frame.
const MARGIN: usize = 128;

unsafe extern "C" {
    /// Where the linker script ends what is not stack.
    static __sheap: u32;
}

/// The stack pointer.
#[inline(always)]
fn here() -> usize {
    let pointer: usize;
    // SAFETY: reads a register.
    unsafe { core::arch::asm!("mov {}, sp", out(reg) pointer, options(nomem, nostack, preserves_flags)) };
    pointer
}

/// A call that is really made, so that its frame is below the one who paints.
#[inline(never)]
fn called<T>(work: impl FnOnce() -> T) -> T {
    work()
}

/// Most bytes of stack that `work` used below its caller, to a word; at least the margin.
#[inline(never)]
pub fn depth<T>(work: impl FnOnce() -> T) -> (T, u32) {
    let top = here();
    // SAFETY: between the end of the statics and the stack pointer lies nothing that anyone uses.
    let bottom = &raw const __sheap as usize;
    let mut place = bottom;
    while place < top - MARGIN {
        unsafe { (place as *mut u32).write_volatile(PAINT) };
        place += 4;
    }
    let result = called(work);
    let mut place = bottom;
    // SAFETY: as above.
    while place < top && unsafe { (place as *const u32).read_volatile() } == PAINT {
        place += 4;
    }
    (result, (top - place) as u32)
}
