#!/usr/bin/env python3
"""Builds one network of real bridges from a description on standard input and prints what was measured, in the form
of tests/reference/lab. `--probe` says instead whether this machine can: exit 77 and the reason if not. It ends with the
process that started it (`--parent` names it, in case that has ended already)."""
import argparse
import json
import os
import signal
import sys
import time

from fabric import QUERIER_GONE, MAX_AGE, MEMBERSHIP, RESPONSE, Fabric
from namespaces import LabError, die_with_parent
from network import Network
from traffic import join_all, window

LONGEST = 120  # seconds of one network; the process ends and the kernel takes the rest away
CANNOT = 77


def settle(fabric, least, most=8.0):
    """Until snooping has learned nothing new for a while."""
    begun = since = time.monotonic()
    before = fabric.learned()
    while time.monotonic() - begun < most:
        time.sleep(0.2)
        now = fabric.learned()
        if now != before:
            before, since = now, time.monotonic()
        if time.monotonic() - begun >= least and time.monotonic() - since >= 0.6:
            return


def steady(fabric):
    """Two windows in a row that agree."""
    before = None
    for _ in range(6):
        loads = window(fabric)
        if loads is not None and loads == before:
            return loads
        before = loads
        time.sleep(0.5)
    raise LabError("the loads did not become steady")


def phase(fabric):
    loads = steady(fabric)
    states, roots = fabric.tree()
    return {"root": roots, "blocked": sorted(f"{link} at {switch}" for (link, switch), s in states.items()
                                             if s == "blocking"),
            "loads": [{"kind": kind, "link": link, "from": source, "to": to, "streams": streams}
                      for (kind, link, source, to), streams in loads.items()]}


def measure(given):
    network = Network(given)
    fabric = Fabric(network)
    fabric.wait_for_tree()
    if network.querier:
        fabric.start_querier()
        # After the first query it hears, a bridge still floods for one response time; reports would flood as well.
        settle(fabric, RESPONSE / 100 + 0.5)
    joined = join_all(fabric)
    settle(fabric, 0.8)
    phases = [phase(fabric)]
    for link in network.cut:
        fabric.cut(link)
        # Until the longest silence of spanning tree is over nothing may have happened yet; then what was learned on
        # the old ways has to fade.
        fabric.wait_for_tree(least=MAX_AGE / 100 + 2.5)
        settle(fabric, max(MEMBERSHIP, QUERIER_GONE) / 100 + 1.0, most=15.0)
        phases.append(phase(fabric))
    for each in joined.values():
        each.close()
    return {"phases": phases}


def probe():
    """One small network with every part in it but the waiting."""
    Fabric(Network({"switches": [{"id": "A"}, {"id": "B"}], "links": [{"a": "A", "b": "B"}], "querier": "A",
                    "endpoints": [{"id": "E", "switch": "A"}]})).learned()


def main():
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("--probe", action="store_true")
    asked.add_argument("--parent", type=int, default=os.getppid())
    asked = asked.parse_args()
    die_with_parent(asked.parent)
    signal.alarm(LONGEST)
    if asked.probe:
        try:
            probe()
        except PermissionError as trouble:
            print(f"{trouble.strerror} (root, or a kernel that lets users have namespaces, is needed)")
            return CANNOT
        except (LabError, OSError) as trouble:
            print(trouble)
            return CANNOT
        return 0
    try:
        print(json.dumps(measure(json.load(sys.stdin))))
    except (LabError, OSError) as trouble:
        print(trouble, file=sys.stderr)
        return 1
    return 0


if __name__ == "__main__":
    sys.exit(main())
