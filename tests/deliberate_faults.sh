#!/usr/bin/env bash
# Breaks the controller's logic on purpose, one line at a time in a copy of the tree, and wants the fault campaign and its
# single orders to catch each: by a rule that breaks, or by fires that no longer burn as wanted. A line that is no longer there is an error, so that the list stays true.
# With a number, every so many of the list: the sample of `all.sh`; `long.sh` tries them all.
set -euo pipefail
cd "$(dirname "$0")/.."
every="${1:-1}"

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
a fault does not end a fire|sequence|Lockout,        Lockout,   Lockout], // Firing|Lockout,        Lockout,   Firing], // Firing
stop does not end a fire|sequence|PostPurge, PostPurge, Firing,     Lockout,        Lockout,   Lockout], // Firing|PostPurge, Firing,    Firing,     Lockout,        Lockout,   Lockout], // Firing
the safeguard is not asked|controller|Event::PermissiveLost => !inputs.permitted|Event::PermissiveLost => false
lit before the actuators stand still|controller|self.limit.is_settled_at(settings.lighting)|true
lit although gas reads already|controller|inputs.gas.watts() < self.shut()|true
the fire follows before the gas is steady|controller|so_far.seconds::<S>() >= seconds(settings.steady_time)|so_far.seconds::<S>() >= S::zero()
a heat that is no number is passed on|crosslimit|if wanted > self.lowest { wanted.watts().smaller(self.highest.watts()) } else { self.lowest.watts() }|wanted.watts()
readings are not looked at while limiting|crosslimit|fn believes(&self, position: &Position<S>, reading: S) -> bool {|fn believes(&self, position: &Position<S>, reading: S) -> bool { if reading >= S::zero() { return true; }
the band is held without its tolerances|crosslimit|let noise = S::c(1.0001)|let spread = one; let noise = S::c(1.0001)
four air changes are three and a half|air_changes|self.needed * self.volume *|S::c(0.875) * self.needed * self.volume *
air is counted as it reads|crosslimit|estimated.smaller(read) / reading|S::one()
the clock is right for the air|controller|S::one() - self.settings.clock_tolerance|S::one()
the clock is right for the actuators|controller|limit: limit.by_clock(settings.clock_tolerance),|limit,
the mixture is not looked at while lighting|controller|!self.limit.has_air_by(inputs.gas, air.heat)|false
too little gas may come for as long as it likes|controller|self.gas_steady.is_none() && lasts(settings.lighting_time)|false
air that its actuator cannot give is believed before the fire|controller|!self.limit.believes_air(inputs.air)|false
a mixture at fault may wait for the next tick|controller|mixture.map(Reason::Mixture),|if inputs.now % 2 == 0 { mixture.map(Reason::Mixture) } else { None },
what either measurement lets pass is not looked at|crosslimit|self.holds(&from_gas.toward(gas), &from_air.toward(air))|true
readings are compared with readings alone|crosslimit|(self.read(gas_reading).or(&self.gas), self.read_air(air_reading).or(&self.air))|(self.read(gas_reading), self.read_air(air_reading))
air counts while gas still reads|controller|Some(time) if self.is_gas_shut() &&|Some(time) if
a chamber that gas has come into stays purged|controller|self.changes.are_enough());|true);
gas that reads unasked is let be|controller|self.gas_unasked.seconds::<S>() > seconds(self.settings.closing_time)|false
a lockout ends without a person|sequence|[Lockout,  Lockout,|[PrePurge, Lockout,
a command that is held acts in each tick|controller|let is_new = self|let is_new = true || self
a command held since the start acts|controller|self.last_command.is_some_and(|self.last_command.is_none_or(
ready for as long as it likes|controller|State::Ready => lasts(settings.ready_time)|State::Ready => false
lit in the tick that purges|controller|                    && before == State::Ready\n                    && inputs|                    && inputs
lit while the gas regulator moves|crosslimit|self.gas.is_at(heat) && self.air.is_at(heat)|self.air.is_at(heat)
no air behind a lockout|sequence|!matches!(self, Off)|!matches!(self, Off | Lockout)
no air in the fire|sequence|!matches!(self, Off)|!matches!(self, Off | Firing)
air is set without a blower|controller|State::Off => (lighting, NetHeatRate::from_watts(S::zero()))|State::Off => (lighting, highest)
a jump locks out for good|controller|self.sensors.iter_mut().for_each(Sensor::restart);|
a heat below zero is believed|controller|heat.is_finite() && heat > -shut|heat.is_finite()
air counts at the flow of the end|air_changes|flow.smaller(self.last_flow) * seconds|flow * seconds
a restart keeps the flow|air_changes|self.last_flow = S::zero();|self.last_flow = self.last_flow.larger(S::zero());
air is certain as it reads|crosslimit|reading * self.least_of_reading|reading
a reading is as low as it reads|crosslimit|reading_low: (one - reading) / (one - actuator)|reading_low: one / (one - actuator)
actuators stand still at the start|crosslimit|Position::anywhere_to(S::c(2.0) * highest.watts())|Position::anywhere_to(S::zero())
the clock is right for the gas regulator|crosslimit|(self.gas_travel.by_clock(tolerance),|(self.gas_travel,
air that its actuator cannot give is believed when ready|controller|!self.limit.believes_air(inputs.air)|self.state != State::Ready && !self.limit.believes_air(inputs.air)
lit steadily without a look at the mixture|controller|self.limit.believes_gas(inputs.gas) && self.limit.is_in_band_by(inputs.gas, air.heat)|gas >= shut
neither gas nor air waits for the other|crosslimit|let (read_gas, read_air)|if wanted >= self.lowest { return Ok((wanted, wanted)); }\n        let (read_gas, read_air)
the blower stops while gas reads|sequence|Off,       PostPurge,  Off,            Off,       Lockout], // Off|Off,       Off,        Off,            Off,       Lockout], // Off
the blower stops as soon as gas reads shut|controller|                    !self.is_gas_shut()|                    self.gas_shut.is_none()
a first tick that reads gas leaves the blower off|controller|                    self.gas_shut.is_none()|                    false
gas that was asked for counts as shut|controller|let reads_shut = !live && is_shut|let reads_shut = is_shut
gas far below zero counts as shut|controller|is_shut && is_heat(gas)|is_shut
a sensor at fault lets the blower stop|controller|&& sensors.is_none();|;
the closing time is none|controller|time.seconds::<S>() * least_share >= seconds(self.settings.closing_time))|true)
the second air sensor may be gone|controller|(true, None) => Err(SensorFault::NotANumber)|(true, None) => Ok(())
a second air sensor nobody spoke of is believed|controller|(false, Some(_)) => Err(SensorFault::NotFitted)|(false, Some(_)) => Ok(())
the second air sensor does not count for lost air|controller|second.smaller(self.flow)|self.flow
the second air sensor does not count for a rich mixture|controller|believed * (second / flow),|believed,
a second air sensor that is no number agrees|sensors|if !(first.is_finite() && second.is_finite())|if false
air without a blower is believed|controller|stands && air.most() >= self.least_air()|false
a hot chamber may not draw air|controller|!runs_down && inputs.chamber_is_cold|!runs_down
a blower may not run down|controller|self.in_state.seconds::<S>() <= seconds(self.settings.run_down_time)|false
a flow of other air than its heat is believed|controller|expected <= S::c(2.0) * heat)|true)
air that contradicts itself counts|controller|self.is_gas_shut() && self.limit.believes_air(inputs.air)|self.is_gas_shut()
the first cause is forgotten|controller|None if self.state != State::Lockout => self.first_cause = None|None => self.first_cause = reason
the first cause outlives its reset|controller|None if self.state != State::Lockout => self.first_cause = None|None if false => self.first_cause = None
the record misses a lockout|controller|cause: first, readings|cause: None, readings
the least air is ignored|controller|air.least_flow() >= self.least_air()|true
a tick of minutes is accepted|controller_settings|LONGEST_TICK: u32 = 2000|LONGEST_TICK: u32 = u32::MAX
a table of another air ratio is accepted|controller_settings|(ratio - target).abs() <= S::c(1e-3) * target|true
a table that is none is accepted|controller_settings|(table.is_usable(), "setpoint table")|(true, "setpoint table")
a least air of nearly zero is accepted|controller_settings|least_heat >= S::c(0.1) * lowest.watts()|true
'

missed=0 count=0
while IFS='|' read -r name file from to; do
    [ -n "$name" ] || continue
    count=$((count + 1))
    [ $((count % every)) = 0 ] || continue
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
        echo "caught: $name ($(grep -m1 -o 'run [0-9]*: .*\|Tally.*' "$copy/log" | cut -c1-110))"
    fi
    mv "$copy/src/control/$file.rs.sound" "$copy/src/control/$file.rs"
done <<<"$faults"
rm -rf "$copy"
[ "$missed" = 0 ]
