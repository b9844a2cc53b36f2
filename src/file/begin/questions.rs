//! The questions, in the order they are asked.

use super::answers::{Answers, Refused};
use super::answers::{
    accepts_bore, accepts_duct, accepts_flow, accepts_gas, accepts_gauge, accepts_height, accepts_lining, accepts_name,
    accepts_opening, accepts_plate, accepts_ports, accepts_pressure, accepts_sizes, accepts_temperature,
    accepts_thickness, accepts_word,
};

/// A question about the burner.
#[derive(Debug)]
pub struct Question {
    /// Its key, which is the command's option and the key of a kept answer.
    pub key: &'static str,
    /// What is asked.
    pub words: &'static str,
    /// Where to look for the answer, and how to write it.
    pub help: &'static str,
    /// Examples, in the order of [`TRADES`](super::TRADES), or one for all.
    pub examples: &'static [&'static str],
    /// The words to choose from; none where anything that reads is accepted.
    pub choices: &'static [&'static str],
    /// What is taken instead and what that costs; none where an answer is needed.
    pub unknown: Option<&'static str>,
    /// Whether it is asked, or only taken as an option.
    pub is_asked: bool,
    /// Whether the answers so far call for it.
    pub applies: fn(&Answers) -> bool,
    /// Whether an answer can be.
    pub accepts: fn(&str) -> Result<(), Refused>,
}

impl Question {
    /// An example by trade.
    #[must_use]
    pub fn example(&self, trade: &str) -> &'static str {
        let place = super::TRADES.iter().position(|known| known.key == trade).unwrap_or(0);
        self.examples.get(place).or(self.examples.first()).copied().unwrap_or("")
    }

    /// Whether a text is an answer to it.
    ///
    /// # Errors
    ///
    /// [`Refused`], which says what is accepted.
    pub fn check(&self, text: &str) -> Result<(), Refused> {
        if text.chars().any(char::is_control) {
            return Err(Refused::from("given a control character, plain text is accepted"));
        }
        if text.chars().count() > 100 {
            return Err(Refused::from("at most 100 characters are accepted"));
        }
        if !self.choices.is_empty() && !self.choices.contains(&text) {
            return Err(Refused(std::format!("given \"{text}\", accepted is one of {}", self.choices.join(", "))));
        }
        (self.accepts)(text).map_err(|why| Refused(std::format!("given \"{text}\", {why}")))
    }
}

/// The question of a key.
#[must_use]
pub fn question(key: &str) -> Option<&'static Question> {
    QUESTIONS.iter().find(|question| question.key == key)
}

const fn asked(
    key: &'static str,
    words: &'static str,
    help: &'static str,
    examples: &'static [&'static str],
    unknown: Option<&'static str>,
    accepts: fn(&str) -> Result<(), Refused>,
) -> Question {
    Question { key, words, help, examples, choices: &[], unknown, is_asked: true, applies: |_| true, accepts }
}

/// Whether something is known of the blower.
fn has_blower(answers: &Answers) -> bool {
    ["blower-flow", "blower-pressure", "blower-plate"].iter().any(|key| answers.text(key).is_some())
}

fn has_chamber(answers: &Answers) -> bool {
    answers.text("chamber").is_some()
}

/// Every question.
pub const QUESTIONS: &[Question] = &[
    Question {
        choices: &["forge", "crucible", "kiln", "glass", "brazing"],
        ..asked(
            "trade",
            "What do you heat with it?",
            "forge: steel. crucible: metal to pour. kiln: pots. glass. brazing: joints.",
            &["forge", "crucible", "kiln", "glass", "brazing"],
            None,
            accepts_word,
        )
    },
    asked(
        "altitude",
        "How high above sea level is the shop?",
        "A map or a telephone says it: from -500 m to 5000 m, or in ft.",
        &["300 m"],
        Some("taken as 300 m: the heat within 1 %, the air within 6 % at up to 900 m"),
        accepts_height,
    ),
    asked(
        "gas",
        "Which gas?",
        "The label of the cylinder or the bill says it: propane, propane-hd5, butane, natural-gas, methane ...",
        &["propane"],
        None,
        accepts_gas,
    ),
    asked(
        "jet",
        "Which bore or drill does the jet have?",
        "Try drill shanks or pins in it with the gas off and the jet taken out: a bore from 0.25 mm to 12.7 mm, or a \
         drill such as \"number 50\" or \"1/16 in\".",
        &["1.4 mm", "number 50", "2 mm", "1.6 mm", "1 mm"],
        Some("taken as 1.5 mm, half a millimeter more or less: the heat within 70 %. Ten minutes with drills mend it"),
        accepts_bore,
    ),
    asked(
        "gauge",
        "What does the gas gauge read at full fire, while gas flows?",
        "Before the jet, at the burner: from 0 to 4.5 bar, or psi, kPa, mbar, inH2O.",
        &["5 psi", "5 psi", "0.2 bar", "4 psi", "0.3 bar"],
        Some("taken as 0.3 bar, 0.15 bar more or less: the heat within 25 %. A gauge mends it"),
        accepts_gauge,
    ),
    asked(
        "blower-flow",
        "How much air does the blower move with nothing in its way?",
        "The nameplate or the catalog says it, in m3/h, L/s or cfm.",
        &["100 cfm", "120 cfm", "200 m3/h", "100 cfm", "60 m3/h"],
        Some("judged by its pressure or its motor instead"),
        accepts_flow,
    ),
    asked(
        "blower-pressure",
        "Which pressure does the blower reach with its outlet shut?",
        "The nameplate says it, or a water-filled hose bent to a U: in inH2O, mbar or Pa.",
        &["2.5 inH2O", "3 inH2O", "600 Pa", "2.5 inH2O", "500 Pa"],
        Some(
            "judged by its flow and its usual speed instead: the blower's pressure within 75 %. A hose with water mends it",
        ),
        accepts_pressure,
    ),
    Question {
        applies: |answers| answers.text("blower-flow").is_none() && answers.text("blower-pressure").is_none(),
        ..asked(
            "blower-plate",
            "What are the motor's power and the impeller's diameter?",
            "The nameplate says the watts, a ruler the impeller: both with a comma between.",
            &["60 W, 120 mm", "90 W, 140 mm", "90 W, 140 mm", "60 W, 120 mm", "40 W, 100 mm"],
            Some("nothing is said of the air then, and not whether the blower will do"),
            accepts_plate,
        )
    },
    Question {
        applies: has_blower,
        choices: &["blast gate", "butterfly", "ball valve", "gate valve", "none"],
        ..asked(
            "damper",
            "What throttles the air?",
            "A plate that slides is a blast gate, a disc that turns a butterfly; none where nothing does.",
            &["blast gate", "blast gate", "butterfly", "blast gate", "blast gate"],
            Some("any kind: its marks are within a factor of three in loss. Looking into the pipe mends it"),
            accepts_word,
        )
    },
    Question {
        applies: |answers| has_blower(answers) && answers.text("damper") != Some("none"),
        ..asked(
            "duct",
            "How wide inside is the air pipe to the burner?",
            "A ruler across its end: from 10 mm to 500 mm, or in.",
            &["2 in", "2 in", "75 mm", "2 in", "40 mm"],
            Some("no marks of the damper are said. A ruler mends it"),
            accepts_duct,
        )
    },
    Question {
        applies: has_blower,
        ..asked(
            "ports",
            "How many ports has the burner head, and how wide?",
            "Count them and try drills: \"60 x 4.5 mm\". A plain pipe end is \"1 x 50 mm\".",
            &["80 x 4 mm", "60 x 4.5 mm", "100 x 5 mm", "80 x 4 mm", "40 x 3.5 mm"],
            Some("nothing is said of the air then, and not whether the blower will do. Counting mends it"),
            accepts_ports,
        )
    },
    asked(
        "chamber",
        "How large is the chamber inside?",
        "Width x height x depth of a box, \"300 x 300 x 400 mm\"; diameter x length of a round one, \"300 x 400 mm\".",
        &["200 x 200 x 400 mm", "300 x 400 mm", "600 x 600 x 600 mm", "400 x 400 x 400 mm", "300 x 200 x 300 mm"],
        Some("nothing is said of the walls, of warming and of purging. A ruler mends it"),
        accepts_sizes,
    ),
    Question {
        applies: has_chamber,
        ..asked(
            "lining",
            "What is the wall made of, or how does it feel?",
            "light (brick a saw cuts), heavy (like stone), soft (blanket), or its name, such as insulating brick 26.",
            &["soft", "light", "light", "heavy", "light"],
            Some(
                "the walls' heat is not said: a heavy wall takes five times that of a light one. A thumbnail mends it",
            ),
            accepts_lining,
        )
    },
    Question {
        applies: |answers| has_chamber(answers) && answers.text("lining").is_some(),
        ..asked(
            "thickness",
            "How thick is the wall?",
            "At the door or a port: from 10 mm to 300 mm, or in.",
            &["50 mm", "65 mm", "115 mm", "100 mm", "50 mm"],
            Some("taken as 75 mm: the heat through the walls within 50 %. A ruler mends it"),
            accepts_thickness,
        )
    },
    Question {
        applies: has_chamber,
        ..asked(
            "opening",
            "How large is the opening that the burnt gas leaves by?",
            "Width x height, \"60 x 100 mm\", or diameter, \"80 mm\", of the flue or the open front.",
            &["80 x 80 mm", "80 mm", "120 x 120 mm", "100 x 60 mm", "60 x 60 mm"],
            Some("taken as a tenth of the front. A ruler mends it"),
            accepts_opening,
        )
    },
    Question {
        is_asked: false,
        ..asked(
            "air-temperature",
            "How warm is the air of the shop?",
            "A thermometer at the blower: from -35 C to 55 C, or in F.",
            &["20 C"],
            Some("taken as 20 C, 10 K more or less"),
            accepts_temperature,
        )
    },
    Question {
        is_asked: false,
        ..asked("name", "What is the burner called?", "Any name.", &["my burner"], Some("by its trade"), accepts_name)
    },
];
