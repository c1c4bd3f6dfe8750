"""The same runs from rest as a person would write them with scipy: one solve_ivp a leg. Answers seconds a run and how far off the times are."""

import json
import sys
import time

import numpy as np
import scipy
from scipy.integrate import solve_ivp


def leg(acceleration, speed, until):
    reached = lambda _, v: v[0] - until
    reached.terminal = True
    solved = solve_ivp(lambda _, v: [acceleration(v[0])], (0.0, 600.0), [speed], events=reached, rtol=1e-8, atol=1e-10)
    return solved.t[-1], solved.y[0][-1]


def seconds_to(goal, run, torque):
    load = lambda v: run["level"] + run["linear"] * v + run["square"] * v * v
    clock, speed = 0.0, 0.0
    launch = float(torque(run["launch"]))
    for number, gear in enumerate(run["gears"]):
        if number == 0:
            held = min(launch * gear["thrust"], run["grip"])
            taken, speed = leg(lambda v: (held - load(v)) / run["open"], speed, min(run["launch"] / gear["rpm"], goal))
            clock += taken
        until = min(gear["until"], goal)
        if speed < until:
            pull = lambda v: float(torque(v * gear["rpm"])) * gear["thrust"]
            gain = lambda v: min((pull(v) - load(v)) / gear["mass"], (run["grip"] - load(v)) / run["open"])
            taken, speed = leg(gain, speed, until)
            clock += taken
        if speed >= goal * (1.0 - 1e-12):
            return clock
        solved = solve_ivp(lambda _, v: [-load(v[0]) / run["open"]], (0.0, run["shift"]), [speed], rtol=1e-8, atol=1e-10)
        clock, speed = clock + run["shift"], solved.y[0][-1]
    return float("nan")


def main():
    ground = json.load(open(sys.argv[1]))["runs"]
    rpm, newton_metres = np.array(ground["curve"]).T
    torque = lambda speed: np.interp(speed, rpm, newton_metres)
    begun = time.perf_counter()
    times = [seconds_to(ground["goal"], run, torque) for run in ground["runs"]]
    taken = (time.perf_counter() - begun) / len(times)
    off = [abs(own - run["time"]) for own, run in zip(times, ground["runs"])]
    print(json.dumps({"seconds": taken, "off": max(off), "runs": len(times), "version": scipy.__version__}))


main()
