"""The bench line, written on simpy as a check that shares no code with dwellcast.

Erector, filler, sealer and robot stand at pitches 0, 2, 4 and 6 of one indexing
conveyor. Times are seconds. README.md says what the figures mean.
"""
import argparse
import json
import math
import random
import statistics

import simpy

SHIFT = 8 * 3600.0
INDEX = 0.60
REACTION_MEAN = 20.0
CLEAR_SIGMA = 0.8  # of the logarithm of the clearing time
MISS, REJECT = 0.004, 0.002
STATES = ("working", "paced", "interlocked", "starved", "blocked", "awaiting", "cleared")
TIE = 1e-9  # seconds; the setting wins a tie against a station


class Station:
    """One station: its act, its jams, and the clock of the state that it is in."""

    def __init__(self, line, name, pitch, act, acts_per_jam, clear_mean, rng):
        self.line, self.name, self.pitch, self.act = line, name, pitch, act
        self.jam, self.clear_mean, self.rng = 1 / acts_per_jam, clear_mean, rng
        self.seconds = dict.fromkeys(STATES, 0.0)
        self.state, self.since = "working", 0.0
        self.stops = self.last = 0
        line.env.process(self.run())

    def enter(self, state):
        """Charge the time since the last change to the state that ends, and change."""
        self.seconds[self.state] += self.line.env.now - self.since
        self.state, self.since = state, self.line.env.now

    def has_work(self):
        return self.name == "erector" or self.line.belt[self.pitch] is not None

    def run(self):
        """Wait for the index, act on what stands before the station, report clear."""
        while True:
            yield self.line.indexed
            if self.has_work():
                yield self.line.env.timeout(self.act)
                if self.rng.random() < self.jam:
                    yield from self.stand_jammed()
                self.finish()
                self.enter("interlocked")
            elif self.name == "filler":  # nozzle and piston turn with the master
                yield self.line.env.timeout(self.act)
            self.line.report_clear(self)

    def stand_jammed(self):
        self.stops += 1
        self.enter("awaiting")
        with self.line.attendant.request() as turn:
            yield turn
            yield self.line.env.timeout(self.rng.expovariate(1 / REACTION_MEAN))
            self.enter("cleared")
            mu = math.log(self.clear_mean) - CLEAR_SIGMA ** 2 / 2
            yield self.line.env.timeout(self.rng.lognormvariate(mu, CLEAR_SIGMA))

    def finish(self):
        """What the act has done to the carton, once any jam has been cleared."""
        line, belt = self.line, self.line.belt
        if self.name == "erector":
            missed = self.rng.random() < MISS
            belt[0] = None if missed else "good"
            line.misses += missed
        elif self.name == "sealer" and self.rng.random() < REJECT:
            belt[self.pitch] = "reject"
            line.rejects += 1
        elif self.name == "robot":
            line.good += belt[self.pitch] == "good"
            belt[self.pitch] = None


class Line:
    """The conveyor, its pace timer and the attendant, for one shift."""

    def __init__(self, dwell, setting, stream):
        self.env = simpy.Environment()
        self.attendant = simpy.Resource(self.env, capacity=1)
        self.period = 3600.0 / setting
        self.belt = [None] * 7  # None, "good" or "reject" on each pitch
        self.good = self.misses = self.rejects = self.cycles = self.setting_last = 0
        self.indexed, self.all_clear = self.env.event(), self.env.event()
        seal = 0.02 + 0.28 + dwell + 0.28  # sensor lag, close, dwell, open
        self.stations = [
            Station(self, name, *rest, random.Random(f"{stream}/{name}"))
            for name, *rest in (
                ("erector", 0, 0.90, 900, 60.0),
                ("filler", 2, 1.30, 2500, 90.0),
                ("sealer", 4, seal, 1500, 120.0),
                ("robot", 6, 1.50, 3000, 75.0),
            )
        ]
        self.env.process(self.run())

    def report_clear(self, station):
        self.not_clear -= 1
        if self.not_clear == 0:
            self.all_clear.succeed(station)

    def run(self):
        """Cycle: index, let every station act, wait for the last one and for the pace."""
        env = self.env
        while True:
            pace_end = env.now + self.period
            self.belt = [None] + self.belt[:-1]
            for station in self.stations:
                station.enter("working" if station.has_work() else "starved")
            self.not_clear, self.all_clear = len(self.stations), env.event()
            yield env.timeout(INDEX)
            now_indexed, self.indexed = self.indexed, env.event()
            now_indexed.succeed()
            last = yield self.all_clear
            paced = pace_end > env.now - TIE
            for station in self.stations:
                if station.state != "starved":
                    station.enter("paced")
            yield env.timeout(max(0.0, pace_end - env.now))
            self.cycles += 1
            if paced:
                self.setting_last += 1
            else:
                last.last += 1


def run_shift(dwell, setting, seed, number):
    """Run one shift from an empty line; return its measures by name."""
    line = Line(dwell, setting, f"{seed}/{number}")
    line.env.run(until=SHIFT)
    measures = {"good": line.good, "misses": line.misses, "rejects": line.rejects,
                "cycles": line.cycles, "setting.last": line.setting_last / line.cycles}
    for station in line.stations:
        station.enter(station.state)  # charge the state that the shift's end cuts
        for state in STATES:
            measures[f"{station.name}.{state}"] = station.seconds[state] / SHIFT
        measures[f"{station.name}.stops"] = station.stops
        measures[f"{station.name}.awaiting_minutes"] = station.seconds["awaiting"] / 60
        measures[f"{station.name}.cleared_minutes"] = station.seconds["cleared"] / 60
        measures[f"{station.name}.last"] = station.last / line.cycles
    return measures


def summarise(shifts):
    """Mean and standard error of each measure (standard error None for one shift)."""
    summary = {}
    for name in shifts[0]:
        values = [shift[name] for shift in shifts]
        error = statistics.stdev(values) / math.sqrt(len(values)) if len(values) > 1 else None
        summary[name] = {"mean": statistics.fmean(values), "standard_error": error}
    return summary


def print_shift(title, m):
    print(f"{title}: {m['good']:.6g} good, {m['misses']:.4g} misses, {m['rejects']:.4g} rejects, "
          f"{m['cycles']:.6g} cycles, setting last in {m['setting.last']:.2%}")
    print(f"  {'':8}" + "".join(f"{state:>12}" for state in STATES)
          + f"{'stops':>8}{'await min':>11}{'clear min':>11}{'last':>9}")
    for name in ("erector", "filler", "sealer", "robot"):
        print(f"  {name:8}" + "".join(f"{m[f'{name}.{state}']:12.3%}" for state in STATES)
              + f"{m[f'{name}.stops']:8.4g}{m[f'{name}.awaiting_minutes']:11.2f}"
              f"{m[f'{name}.cleared_minutes']:11.2f}{m[f'{name}.last']:9.2%}")


def main():
    parser = argparse.ArgumentParser(description="The bench line on simpy.")
    parser.add_argument("--shifts", type=int, required=True, help="8 h shifts to run")
    parser.add_argument("--seed", type=int, required=True)
    parser.add_argument("--dwell", type=float, default=1.15, help="seal dwell, s")
    parser.add_argument("--setting", type=float, default=1500, help="cartons/h")
    parser.add_argument("--json", action="store_true", help="every shift and the summary")
    parser.add_argument("--csv", metavar="VARIANT", help="summary rows as in stored.csv")
    args = parser.parse_args()
    shifts = [run_shift(args.dwell, args.setting, args.seed, n) for n in range(1, args.shifts + 1)]
    summary = summarise(shifts)
    if args.json:
        print(json.dumps({"dwell": args.dwell, "setting": args.setting, "seed": args.seed,
                          "shifts": shifts, "summary": summary}, indent=1))
    elif args.csv:
        for name, s in summary.items():
            error = "" if s["standard_error"] is None else f"{s['standard_error']:.6g}"
            print(f"{args.csv},{name},{s['mean']:.8g},{error},{args.shifts},{args.seed}")
    else:
        for number, shift in enumerate(shifts, 1):
            print_shift(f"shift {number}", shift)
        print_shift("mean", {name: s["mean"] for name, s in summary.items()})


if __name__ == "__main__":
    main()
