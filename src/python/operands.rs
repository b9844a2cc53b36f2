//! Array arguments of one call, broadcast against each other without copies.

use std::prelude::rust_2024::*;
use std::string::ToString;
use std::{thread, vec};

use numpy::{PyArray2, PyReadonlyArray1};
use pyo3::exceptions::{PyMemoryError, PyValueError};
use pyo3::prelude::*;

use crate::error::Error;
use crate::limits::Input;

/// Elements from which two threads share the work.
const PARALLEL: usize = 4096;
/// Threads used for large arrays, unless the environment's JETWRIGHT_THREADS is 1.
const THREADS: usize = 2;

/// One argument: contiguous data and, for each axis of the result, how far a step moves in it.
pub struct Operand<'py> {
    data: PyReadonlyArray1<'py, f64>,
    steps: Vec<usize>,
}

impl<'py> FromPyObject<'_, 'py> for Operand<'py> {
    type Error = PyErr;
    fn extract(object: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        let (data, steps): (PyReadonlyArray1<'py, f64>, Vec<usize>) = object.extract()?;
        Ok(Self { data, steps })
    }
}

/// A column for each result, and why the first element without an answer has none.
pub type Answer<'py> = PyResult<(Bound<'py, PyArray2<f64>>, Option<Told>)>;

/// Why an element has no answer, by its place in the flattened result.
struct Failure {
    index: usize,
    error: Error,
}

/// Calls `function` for every element of the broadcast arguments; each answer fills a column of the result.
///
/// Elements are independent, so the result does not depend on how many threads share them. An element without
/// an answer becomes NaN; the first of them comes back as the failure.
pub fn map<'py, const IN: usize, const OUT: usize, T, F>(
    py: Python<'py>,
    operands: &[Operand<'py>],
    shape: &[usize],
    function: F,
) -> Answer<'py>
where
    T: Copy,
    F: Fn(&[f64; IN], &mut Kept<T>) -> Result<[f64; OUT], Error> + Sync,
{
    map_from(PARALLEL, py, operands, shape, function)
}

/// The same with two threads from a number of elements on: two, for what takes milliseconds an element.
pub fn map_from<'py, const IN: usize, const OUT: usize, T, F>(
    parallel: usize,
    py: Python<'py>,
    operands: &[Operand<'py>],
    shape: &[usize],
    function: F,
) -> Answer<'py>
where
    T: Copy,
    F: Fn(&[f64; IN], &mut Kept<T>) -> Result<[f64; OUT], Error> + Sync,
{
    // What does not fit into memory is an error in Python, not the end of the process.
    let whole = shape.iter().try_fold(OUT, |product, &size| product.checked_mul(size));
    if whole.is_none_or(|whole| Vec::<f64>::new().try_reserve_exact(whole).is_err()) {
        return Err(PyMemoryError::new_err("the answer of these shapes does not fit into memory"));
    }
    let count: usize = shape.iter().product();
    let slices: Vec<&[f64]> = operands.iter().map(|operand| operand.data.as_slice()).collect::<Result<_, _>>()?;
    let steps: Vec<&[usize]> = operands.iter().map(|operand| operand.steps.as_slice()).collect();
    if slices.len() != IN || steps.iter().any(|steps| steps.len() != shape.len()) {
        return Err(PyValueError::new_err("wrong number of arguments or axes"));
    }
    for (slice, steps) in slices.iter().zip(&steps) {
        let last: usize = shape.iter().zip(*steps).map(|(&size, &step)| size.saturating_sub(1) * step).sum();
        if count > 0 && last >= slice.len() {
            return Err(PyValueError::new_err("an argument is shorter than its shape"));
        }
    }
    let mut columns = vec![0.0_f64; OUT * count];
    let failure = py.detach(|| {
        let work = |start: usize, mut parts: Vec<&mut [f64]>| -> Option<Failure> {
            let mut inputs: [f64; IN] = core::array::from_fn(|input| slices[input][0]);
            let mut walk = Walk::new(shape, &slices, &steps, start);
            let mut kept = Kept::new();
            let mut first = None;
            for offset in 0..parts.first().map_or(0, |part| part.len()) {
                walk.read(&mut inputs);
                match function(&inputs, &mut kept) {
                    Ok(answers) => {
                        for (part, answer) in parts.iter_mut().zip(answers) {
                            part[offset] = answer;
                        }
                    }
                    Err(error) => {
                        for part in &mut parts {
                            part[offset] = f64::NAN;
                        }
                        first = first.or(Some(Failure { index: start + offset, error }));
                    }
                }
                walk.step(shape);
            }
            first
        };
        if count == 0 {
            return None;
        }
        let columns: Vec<&mut [f64]> = columns.chunks_mut(count).collect();
        if count < parallel || std::env::var_os("JETWRIGHT_THREADS").is_some_and(|threads| threads == "1") {
            return work(0, columns);
        }
        let half = count / THREADS;
        let (heads, tails): (Vec<_>, Vec<_>) = columns.into_iter().map(|column| column.split_at_mut(half)).unzip();
        thread::scope(|scope| {
            let second = scope.spawn(|| work(half, tails));
            let first = work(0, heads);
            first.or(second.join().unwrap_or(None))
        })
    });
    let array = numpy::PyArray1::from_vec(py, columns);
    let array = numpy::PyArrayMethods::reshape(&array, [OUT, count])?;
    Ok((array, failure.map(|Failure { index, error }| tell(index, error))))
}

/// What was worked out for the element before, kept while the inputs it depends on stay the same.
pub struct Kept<T> {
    inputs: [f64; 8],
    value: Option<T>,
}

impl<T: Copy> Kept<T> {
    /// Nothing yet.
    pub fn new() -> Self {
        Self { inputs: [f64::NAN; 8], value: None }
    }

    /// The value kept for these inputs.
    pub fn get(&self, inputs: &[f64]) -> Option<T> {
        self.value.filter(|_| self.inputs.iter().zip(inputs).all(|(kept, input)| kept == input))
    }

    /// Keeps a value for these inputs, eight at most.
    pub fn put(&mut self, inputs: &[f64], value: T) {
        for (kept, input) in self.inputs.iter_mut().zip(inputs) {
            *kept = *input;
        }
        self.value = Some(value);
    }
}

/// The operands that change from element to element as the elements are walked in order.
struct Walk<'a> {
    index: Vec<usize>,
    moving: Vec<Moving<'a>>,
}

/// One of them, and where it stands.
struct Moving<'a> {
    input: usize,
    data: &'a [f64],
    steps: &'a [usize],
    at: usize,
}

impl<'a> Walk<'a> {
    fn new(shape: &[usize], slices: &[&'a [f64]], steps: &[&'a [usize]], start: usize) -> Self {
        let mut index = vec![0; shape.len()];
        let mut rest = start;
        for (axis, &size) in shape.iter().enumerate().rev() {
            index[axis] = rest % size;
            rest /= size;
        }
        let operands = slices.iter().zip(steps).enumerate();
        let moving = operands
            .filter(|(_, (_, steps))| steps.iter().any(|&step| step > 0))
            .map(|(input, (&data, &steps))| {
                let at = index.iter().zip(steps).map(|(&place, &step)| place * step).sum();
                Moving { input, data, steps, at }
            })
            .collect();
        Self { index, moving }
    }

    /// The values of the operands here; those that never change keep the first.
    fn read(&self, inputs: &mut [f64]) {
        for operand in &self.moving {
            inputs[operand.input] = operand.data[operand.at];
        }
    }

    fn step(&mut self, shape: &[usize]) {
        for axis in (0..shape.len()).rev() {
            self.index[axis] += 1;
            if self.index[axis] < shape[axis] {
                for operand in &mut self.moving {
                    operand.at += operand.steps[axis];
                }
                return;
            }
            self.index[axis] = 0;
            for operand in &mut self.moving {
                operand.at -= (shape[axis] - 1) * operand.steps[axis];
            }
        }
    }
}

/// A failure as Python sees it: index, the input's key, the value in its SI unit, the message.
pub type Told = (usize, Option<&'static str>, f64, String);

/// One error told in words.
pub fn tell(index: usize, error: Error) -> Told {
    let (input, value) = match error {
        Error::NotFinite { input } => (Some(input), f64::NAN),
        Error::OutOfRange { input, given } => (Some(input), f64::from(given)),
        Error::InvertedPair { lesser, .. } => (Some(lesser), f64::NAN),
        Error::Points { input } | Error::NotConverged { input } => (Some(input), f64::NAN),
        Error::NoSolution { input, nearest } => (Some(input), f64::from(nearest)),
        Error::FractionsSum { given } => (Some(Input::Fraction), f64::from(given)),
        _ => (None, f64::NAN),
    };
    (index, input.map(Input::key), value, error.to_string())
}

/// The key of every input that an argument can fill.
#[pyfunction]
pub fn input_keys() -> Vec<&'static str> {
    Input::ALL.iter().map(|input| input.key()).collect()
}

/// A plain `ValueError` of the core's message, for arguments that are no arrays.
pub fn refuse(error: Error) -> PyErr {
    PyValueError::new_err(error.to_string())
}
