/* The sketch on a board that is not there: what its pins read of an invented burner, and what it drives, a line a loop.
 *
 * A person starts at 1 s, lights at 40 s, turns the heat up at 60 s and down at 90 s. Each `PIN VALUE FROM TO`
 * (seconds) is a fault or a deed. An analog pin then reads the value; the contact of a digital pin is open (0: a broken
 * wire, too) or closed to ground (1). An open contact reads what the pin's pull-up makes of it, else this and that,
 * two seconds each.
 * Pin -1 is the clock, put forward by VALUE ms; pin -2 is the blower, which stands still; pin -3 is the controller in
 * memory, whose first word is lost.
 */
#include <cstdio>
#include <cstdlib>

struct JetwrightController;
extern JetwrightController controller;
void setup();
void loop();

/* Pins as the sketch has them. */
enum { START = 2, LIGHT = 3, STOP = 4, PERMITTED = 5 };
enum { REQUEST = 6, BLOWER = 7, LOCKED = 8, GAS = 9, AIR = 10, PINS = 17 };
enum { CLOCK = -1, STALLED = -2, MEMORY = -3 };

struct Deed {
  int pin, value;
  double from, to;
};

static const double TICK = 0.1;
static int driven[PINS], mode[PINS];
static double now = 0.0;
/* Where the regulator stands and what the gauge reads, Pa; the damper, as a share; the air, m3/s. */
static double regulator = 0.0, gauge = 0.0, damper = 0.0, air = 0.0;
static long loops = 0;
static bool watched = false, fed = false;
static Deed deeds[8];
static int deed_count = 0;

static const Deed *deed_of(int pin) {
  for (int index = 0; index < deed_count; index++) {
    const Deed &deed = deeds[index];
    if (deed.pin == pin && now >= deed.from && now < deed.to) return &deed;
  }
  return nullptr;
}

void startWatchdog() { watched = true; }
void feedWatchdog() { fed = true; }

void pinMode(int pin, int is) {
  mode[pin] = is;
  if (is == OUTPUT && driven[pin] != LOW) std::abort();
}

void digitalWrite(int pin, int level) { driven[pin] = level; }
void analogWrite(int pin, int level) { driven[pin] = level; }

unsigned long millis() {
  const Deed *jump = deed_of(CLOCK);
  return (unsigned long)(1000.0 * now + 0.5) + (jump ? (unsigned long)jump->value : 0ul);
}

static bool closed(int pin) {
  if (const Deed *deed = deed_of(pin)) return deed->value != 0;
  switch (pin) {
    case START: return now >= 1.0 && now < 1.5;
    case LIGHT: return now >= 39.5 && now < 40.0;
    case STOP: return true;
    case PERMITTED: return true;
    default: return false;
  }
}

int digitalRead(int pin) {
  if (closed(pin)) return LOW;
  return mode[pin] == INPUT_PULLUP ? HIGH : (loops / 20 + 1) % 2 == 1 ? HIGH : LOW;
}

int analogRead(int pin) {
  if (const Deed *deed = deed_of(pin)) return deed->value;
  /* A live reading is never still. */
  int noise = (int)(loops % 2);
  switch (pin) {
    case A0: return gauge > 0.0 ? (int)(gauge / 100.0) + noise : 0;
    case A1: return air > 0.0 ? (int)(air / 2e-5) + noise : 0;
    case A2: return now >= 60.0 && now < 90.0 ? 733 : 67;
    default: return 0;
  }
}

static double toward(double value, double goal, double most) {
  return goal > value + most ? value + most : goal < value - most ? value - most : goal;
}

static void plant() {
  bool turns = driven[BLOWER] == HIGH && !deed_of(STALLED);
  regulator = toward(regulator, driven[GAS] * 100e3 / 255.0, 12e3 * TICK);
  gauge = driven[REQUEST] == HIGH ? toward(gauge, regulator, 40e3 * TICK) : toward(gauge, 0.0, 40e3 * TICK);
  damper = toward(damper, driven[AIR] / 255.0, 0.3 * TICK);
  air = toward(air, turns ? 9.2e-3 * damper : 0.0, 3e-3 * TICK);
}

int main(int count, char **arguments) {
  for (int place = 1; place + 3 < count && deed_count < 8; place += 4) {
    deeds[deed_count++] = {std::atoi(arguments[place]), std::atoi(arguments[place + 1]),
                           std::atof(arguments[place + 2]), std::atof(arguments[place + 3])};
  }
  setup();
  if (!watched) return 1;
  for (; loops < 1200; loops++, now = TICK * (double)loops) {
    if (deed_of(MEMORY)) *reinterpret_cast<uint32_t *>(&controller) = 0;
    fed = false;
    loop();
    plant();
    std::printf("loop %.9g %d %d %d %d %.9g %.9g %d %d\n", now, driven[REQUEST], driven[BLOWER], driven[GAS],
                driven[AIR], gauge, air, fed, driven[LOCKED]);
  }
}
