#!/usr/bin/env python3
"""Draws networks, measures each on real bridges, asks lab_predict for each, and compares the streams on every link and
direction, the blocked ports and the roots. One line per network; ends with 1 at the first that differs each time it is measured, with 77 and the
reason where this machine cannot build such networks."""
import argparse
import json
import os
import pathlib
import subprocess
import sys
import tempfile
import time

import draw

AT_ONCE = 4
# On a machine that is short of time a spanning tree can move once more after it had settled, and members learned on the
# way there stay. Such a network is measured again, by itself; a fault of the prediction comes back every time.
MEASUREMENTS = 3
CANNOT = 77
HERE = pathlib.Path(__file__).resolve().parent
MEASURE = [sys.executable, str(HERE / "measure.py"), "--parent", str(os.getpid())]


class Run:
    """One network being measured by a process of its own."""

    def __init__(self, number, kind, network):
        self.number, self.kind, self.network = number, kind, network
        self.out, self.err = tempfile.TemporaryFile("w+"), tempfile.TemporaryFile("w+")
        self.begun = time.monotonic()
        self.process = subprocess.Popen(MEASURE, stdin=subprocess.PIPE, stdout=self.out, stderr=self.err, text=True)
        self.process.stdin.write(json.dumps(network))
        self.process.stdin.close()

    def answer(self):
        """The measured phases, or the reason why there are none."""
        self.out.seek(0), self.err.seek(0)
        if self.process.returncode != 0:
            return None, self.err.read().strip() or f"ended with status {self.process.returncode}"
        return json.load(self.out)["phases"], ""


def predict(program, network):
    done = subprocess.run([program, "-"], input=json.dumps(network), capture_output=True, text=True, check=False)
    if done.returncode != 0:
        sys.exit(f"lab_predict refuses a network: {done.stderr.strip()}\n{json.dumps(network)}")
    return json.loads(done.stdout)["phases"]


def facts(phase, with_tree):
    """What is compared, one value per name."""
    found = {f"streams on {l['kind']} {l['link']} from {l['from']} to {l['to']}": sorted(l["streams"])
             for l in phase["loads"]}
    if with_tree:
        found["blocked"] = sorted(phase["blocked"])
        found["root"] = phase["root"]
    return found


def differences(measured, predicted, with_tree):
    if len(measured) != len(predicted):
        return [f"{len(measured)} phases measured, {len(predicted)} predicted"]
    found = []
    for number, (m, p) in enumerate(zip(measured, predicted)):
        m, p = facts(m, with_tree), facts(p, with_tree)
        found += [f"phase {number}, {name}: measured {m.get(name)}, predicted {p.get(name)}"
                  for name in sorted(m.keys() | p.keys()) if m.get(name) != p.get(name)]
    return found


def judge(run, program, last):
    """Prints the network's line, with both answers where they differ for the last time; whether they agree."""
    net = run.network
    line = (f"{run.number:3} {run.kind:8} {len(net['switches'])} switches, {len(net['links'])} links, "
            f"{len(net['streams'])} streams, querier {net['querier'] or 'none'}, "
            f"{sum(s.get('snooping', net['snooping']) for s in net['switches'])} snoop, "
            f"{'tree' if net['stp'] else 'no tree'}"
            f"{', cut ' + ' and '.join(net['cut']) if 'cut' in net else ''}, {time.monotonic() - run.begun:.0f} s")
    measured, why = run.answer()
    if measured is None:
        print(f"{line}: NOT MEASURED: {why}" + (f"\n{json.dumps(net)}" if last else ""), flush=True)
        return False
    predicted = predict(program, net)
    found = differences(measured, predicted, net["stp"])
    print(f"{line}: {'equal' if not found else 'DIFFERS' if last else 'differs, measured again'}", flush=True)
    if found and last:
        print("\n".join(found), f"network:   {json.dumps(net)}", f"measured:  {json.dumps(measured)}",
              f"predicted: {json.dumps(predicted)}", sep="\n", flush=True)
    return not found


def again(run, program):
    """Measures a network that differed by itself; whether it agrees now."""
    for left in range(MEASUREMENTS - 2, -1, -1):
        run = Run(run.number, run.kind, run.network)
        run.process.wait()
        if judge(run, program, last=left == 0):
            return True
    return False


def main():
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("--count", type=int, default=12)
    asked.add_argument("--seed", type=int, default=1)
    asked.add_argument("--predict", required=True, help="the program lab_predict")
    asked = asked.parse_args()
    probe = subprocess.run(MEASURE + ["--probe"], capture_output=True, text=True, check=False)
    if probe.returncode != 0:
        print("skipped:", probe.stdout.strip() or probe.stderr.strip())
        return CANNOT
    begun, waiting, running, doubtful, equal = time.monotonic(), list(range(asked.count)), [], [], 0
    waiting.sort(key=lambda number: number % draw.CUT_EVERY != 1)  # those with a cut take longest
    while waiting or running:
        while waiting and len(running) < AT_ONCE:
            number = waiting.pop(0)
            running.append(Run(number, *draw.network(asked.seed, number)))
        for run in [r for r in running if r.process.poll() is not None]:
            running.remove(run)
            if not judge(run, asked.predict, last=False):
                doubtful.append(run)
                continue
            equal += 1
        time.sleep(0.05)
    for run in doubtful:
        if not again(run, asked.predict):
            print(f"verdict: prediction and bridges differ (seed {asked.seed}); {equal} were equal before")
            return 1
        equal += 1
    print(f"verdict: all {equal} networks equal on every link and direction (seed {asked.seed}, "
          f"{time.monotonic() - begun:.0f} s)")
    return 0


if __name__ == "__main__":
    sys.exit(main())
