//! Registers of sensors and actuators at INVENTED addresses: what a program for a real board has in their place.

const READ: *const f32 = 0x4000_0000 as *const f32;
const WRITE: *mut f32 = 0x4000_0010 as *mut f32;

/// What a sensor reads.
pub fn read(index: usize) -> f32 {
    // SAFETY: a register of the invented board, within its block.
    unsafe { READ.add(index).read_volatile() }
}

/// Sets an actuator.
pub fn write(index: usize, value: f32) {
    // SAFETY: as above.
    unsafe { WRITE.add(index).write_volatile(value) };
}
