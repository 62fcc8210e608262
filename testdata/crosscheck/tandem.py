"""A serial line with blocking after service, written on simpy as a second check.

Station 1 never lacks a part and the last station can always discharge. A buffer of
b counts the places between two stations only, so b = 0 hands parts straight over.
A finished part stays on its station until there is a place for it (blocking after
service). Times are in any unit; the throughput is in parts per that unit.
"""
import argparse
import math
import random
import statistics

import simpy


def sampler(distribution, mean, stages, rng):
    """A function that draws one processing time with this mean (> 0)."""
    if distribution == "exp":
        return lambda: rng.expovariate(1 / mean)
    if distribution == "erlang":
        return lambda: rng.gammavariate(stages, mean / stages)
    return lambda: mean


def station(env, draw, waiting, own_room, next_room, next_waiting, leave):
    """Take a part, work on it, hold it until the next section has room, pass it on.

    A section is a station's own place and the buffer before it. `waiting` and
    `own_room` are None for the first station, `next_room` and `next_waiting` for the last.
    """
    while True:
        if waiting:
            yield waiting.get(1)
        yield env.timeout(draw())
        if next_room:
            yield next_room.get(1)  # blocked until this succeeds
        if own_room:
            yield own_room.put(1)
        if next_waiting:
            yield next_waiting.put(1)
        else:
            leave()


def replicate(args, number):
    """Throughput of one replication: parts over the time from the end of warm-up."""
    env = simpy.Environment()
    finished, enough = [0], env.event()
    start = [0.0]

    def leave():
        finished[0] += 1
        if finished[0] == args.warmup:
            start[0] = env.now
        if finished[0] == args.warmup + args.parts:
            enough.succeed()

    room = [None] + [simpy.Container(env, init=b + 1) for b in args.buffers] + [None]
    waiting = [None] + [simpy.Container(env) for _ in args.buffers] + [None]
    for i, mean in enumerate(args.means):
        draw = sampler(args.distribution, mean, args.stages,
                       random.Random(f"{args.seed}/{number}/{i}"))
        env.process(station(env, draw, waiting[i], room[i], room[i + 1], waiting[i + 1], leave))
    env.run(until=enough)
    return args.parts / (env.now - start[0])


def student_quantile(p, freedom):
    """Student's t quantile, expanded about the normal's; within 0.002 for p <= 0.995, freedom >= 9.

    Abramowitz and Stegun (1964), eq. 26.7.5 (from memory), first three corrections.
    """
    z = statistics.NormalDist().inv_cdf(p)
    return (z + (z ** 3 + z) / (4 * freedom)
            + (5 * z ** 5 + 16 * z ** 3 + 3 * z) / (96 * freedom ** 2)
            + (3 * z ** 7 + 19 * z ** 5 + 17 * z ** 3 - 15 * z) / (384 * freedom ** 3))


def numbers(kind):
    """An argparse type: numbers separated by commas; an empty text is no numbers."""
    return lambda text: [kind(part) for part in text.split(",")] if text else []


def parse():
    parser = argparse.ArgumentParser(description="Throughput of a serial line on simpy.")
    parser.add_argument("--means", type=numbers(float), required=True, help="e.g. 1,1.2,1")
    parser.add_argument("--buffers", type=numbers(int), required=True, help="e.g. 0,2")
    parser.add_argument("--distribution", choices=("exp", "erlang", "det"), default="exp")
    parser.add_argument("--stages", type=int, default=2, help="stages of the Erlang (default 2)")
    parser.add_argument("--parts", type=int, default=5000, help="counted in each replication")
    parser.add_argument("--warmup", type=int, default=500, help="parts before counting, at least 1")
    parser.add_argument("--replications", type=int, default=20, help="at least 10")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--confidence", type=float, default=0.99)
    args = parser.parse_args()
    if len(args.buffers) != len(args.means) - 1:
        parser.error("one buffer is needed between each two stations")
    if min(args.means) <= 0 or min(args.buffers, default=0) < 0 or args.stages < 1:
        parser.error("means and stages must be positive, buffers not negative")
    if args.warmup < 1 or args.parts < 1 or args.replications < 10:
        parser.error("warm-up and parts must be at least 1, replications at least 10")
    return args


def main():
    args = parse()
    rates = [replicate(args, number) for number in range(args.replications)]
    error = statistics.stdev(rates) / math.sqrt(len(rates))
    half = error * student_quantile((1 + args.confidence) / 2, len(rates) - 1)
    mean = statistics.fmean(rates)
    print(f"throughput {mean:.6f}, {args.confidence:.0%} interval {mean - half:.6f} to "
          f"{mean + half:.6f}, standard error {error:.6f}, {args.replications} replications")


if __name__ == "__main__":
    main()
