#!/usr/bin/env bash
# Breaks the controller's logic on purpose, one line at a time in a copy of the tree, and wants the fault campaign to
# catch each: by a rule that breaks, or by fires that no longer burn as wanted. A line that is no longer there is an error, so that the list stays true.
set -euo pipefail
cd "$(dirname "$0")/.."

copy=target/deliberate-faults
rm -rf "$copy"
mkdir -p "$copy"
cp -r Cargo.toml Cargo.lock README.md src tests benches "$copy"

# name | file of src/control | what stands there | what stands there instead
faults='
a reading out of range is believed|sensors|!(reading >= lowest && reading <= highest)|false
a reading that jumps is believed|sensors|if !is_within_reach {|if false {
a stuck sensor is believed|sensors|self.same_for >= longest.seconds()|self.same_for < S::zero()
sensors that contradict are believed|sensors|self.apart_for >= self.patience|self.apart_for < S::zero()
a late tick counts as one in time|clock|since <= longest && self.still < STILL|true
a clock that goes backward stands still|clock|now.wrapping_sub(last)|now.saturating_sub(last)
air changes go on from the last fire|controller|self.changes.restart();\n        }\n        if before|}\n        if before
four air changes are two|air_changes|self.needed * self.volume *|S::c(0.5) * self.needed * self.volume *
doubt does not end a fire|sequence|Locked,         Locked], // Firing|Locked,         Firing], // Firing
stop does not end a fire|sequence|BlowingOut,     BlowingOut,     Locked,         Locked,         Locked], // Firing|BlowingOut,     Firing,         Locked,         Locked,         Locked], // Firing
the safeguard is not asked|controller|Event::Refused => !inputs.permitted|Event::Refused => false
lit before the actuators stand still|controller|self.limit.is_settled_at(settings.lighting)|true
lit although gas reads already|controller|inputs.gas.watts() < self.shut()|true
the fire follows before the gas is steady|controller|so_far >= settings.steady_time.seconds()|so_far >= S::zero()
a heat that is no number is passed on|crosslimit|if wanted > self.lowest { wanted.watts().smaller(self.highest.watts()) } else { self.lowest.watts() }|wanted.watts()
readings are not looked at while limiting|crosslimit|fn believes(&self, position: &Position<S>, reading: S) -> bool {|fn believes(&self, position: &Position<S>, reading: S) -> bool { if reading >= S::zero() { return true; }
the band is held without its tolerances|crosslimit|let noise = S::c(1.0001)|let spread = one; let noise = S::c(1.0001)
four air changes are three and a half|air_changes|self.needed * self.volume *|S::c(0.875) * self.needed * self.volume *
air is counted as it reads|crosslimit|reckoned.smaller(read) / reading|S::one()
the clock is right for the air|controller|S::one() - self.settings.clock_tolerance|S::one()
the clock is right for the actuators|controller|limit: limit.by_clock(settings.clock_tolerance),|limit,
the mixture is not looked at while lighting|controller|!self.limit.has_air_for(inputs.gas, inputs.air)|false
too little gas may come for as long as it likes|controller|self.in_state > settings.lighting_time.seconds()|false
air that its actuator cannot give is believed before the fire|controller|!self.limit.believes_air(inputs.air)|false
a mixture in doubt may wait for the next tick|controller|reason.or(mixture.map(Reason::Mixture))|reason.or(if inputs.now % 2 == 0 { mixture.map(Reason::Mixture) } else { None })
what either witness lets pass is not looked at|crosslimit|self.holds(&from_gas.toward(gas), &from_air.toward(air))|true
readings are compared with readings alone|crosslimit|(self.read(gas_reading).or(&self.gas), self.read(air_reading).or(&self.air))|(self.read(gas_reading), self.read(air_reading))
air counts while gas still reads|controller|Some(time) if inputs.gas.watts() < self.shut()|Some(time) if true
a chamber that gas has come into stays blown through|controller|self.changes.are_enough());|true);
gas that reads unasked is let be|controller|self.gas_unasked > self.settings.closing_time.seconds()|false
a lock opens without a person|sequence|Locked,         Locked,         Off,            Locked,         Locked,         Locked,         Locked], // Locked|BlowingThrough, Locked,         Off,            Locked,         Locked,         Locked,         Locked], // Locked
a command that is held acts in each tick|controller|let is_new = self|let is_new = true || self
a command held since the start acts|controller|self.last_command.is_some_and(|self.last_command.is_none_or(
ready for as long as it likes|controller|self.in_state > settings.ready_time.seconds()|false
lit in the tick that blows through|controller|command == Command::Light && before == State::Ready && may|command == Command::Light && may
lit while the gas regulator moves|crosslimit|self.gas.is_at(heat) && self.air.is_at(heat)|self.air.is_at(heat)
blowing out goes on from the last count|controller|State::BlowingOut) {|State::Off) {
no air behind a lock|sequence|!matches!(self, Off)|!matches!(self, Off | Locked)
no air in the fire|sequence|!matches!(self, Off)|!matches!(self, Off | Firing)
air is set without a blower|controller|State::Off => (lighting, NetHeatRate::from_watts(S::zero()))|State::Off => (lighting, highest)
a jump locks for good|controller|self.sensors.iter_mut().for_each(Sensor::restart);|
a heat below nought is believed|controller|heat.is_finite() && heat > -self.shut()|heat.is_finite()
air counts at the flow of the end|air_changes|flow.smaller(self.last_flow) * seconds|flow * seconds
a restart keeps the flow|air_changes|self.last_flow = S::zero();|self.last_flow = self.last_flow.larger(S::zero());
air is certain as it reads|crosslimit|reading * self.least_of_reading|reading
a reading is as low as it reads|crosslimit|reading_low: (one - reading) / (one - actuator)|reading_low: one / (one - actuator)
actuators stand still at the start|crosslimit|Position::anywhere_to(S::c(2.0) * highest.watts())|Position::anywhere_to(S::zero())
the clock is right for the gas regulator|crosslimit|(self.gas_travel.by_clock(tolerance),|(self.gas_travel,
air that its actuator cannot give is believed when ready|controller|!self.limit.believes_air(inputs.air)|self.state != State::Ready && !self.limit.believes_air(inputs.air)
lit steadily without a look at the mixture|controller|self.limit.believes_gas(inputs.gas) && self.limit.is_in_band(inputs.gas, inputs.air)|gas >= self.shut()
neither gas nor air waits for the other|crosslimit|let (read_gas, read_air)|if wanted >= self.lowest { return Ok((wanted, wanted)); }\n        let (read_gas, read_air)
'

missed=0
while IFS='|' read -r name file from to; do
    [ -n "$name" ] || continue
    cp "src/control/$file.rs" "$copy/src/control/$file.rs.sound"
    FROM="$from" TO="$to" perl -0pi -e '
        BEGIN { ($f, $t) = map { s/\\n/\n/gr } @ENV{qw(FROM TO)} }
        s/\Q$f\E/$t/ or die "not found: $f\n"' "$copy/src/control/$file.rs"
    if ! CARGO_TARGET_DIR="$PWD/target" cargo test --quiet --manifest-path "$copy/Cargo.toml" --test fault_campaign --no-run 2>"$copy/log"; then
        echo "does not build: $name"; cat "$copy/log"; exit 1
    fi
    if CARGO_TARGET_DIR="$PWD/target" cargo test --quiet --manifest-path "$copy/Cargo.toml" --test fault_campaign \
        >"$copy/log" 2>&1; then
        echo "NOT caught: $name"
        missed=1
    else
        echo "caught: $name ($(grep -m1 -o 'evening [0-9]*: .*\|Tally.*' "$copy/log" | cut -c1-110))"
    fi
    mv "$copy/src/control/$file.rs.sound" "$copy/src/control/$file.rs"
done <<<"$faults"
rm -rf "$copy"
[ "$missed" = 0 ]
