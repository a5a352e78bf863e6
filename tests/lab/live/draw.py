"""Draws laboratory networks: the same seed and number give the same network."""
import random

KINDS = ("tree", "ring", "chords", "parallel")
CUT_EVERY = 6  # of a dozen, two are cut


def _ends(kind, dice, names):
    if kind == "ring":
        names = names if len(names) > 2 else names + ["S3"]
        return [(names[i], names[(i + 1) % len(names)]) for i in range(len(names))]
    ends = [(dice.choice(names[:i]), names[i]) for i in range(1, len(names))]
    if kind == "chords":
        ends += [tuple(dice.sample(names, 2)) for _ in range(dice.randint(1, 3))]
    if kind == "parallel":
        ends += [dice.choice(ends) for _ in range(dice.randint(1, 2))]
    return ends


def _links(kind, dice, names):
    links = []
    for a, b in _ends(kind, dice, names):
        a, b = dice.choice([(a, b), (b, a)])
        link = {"a": a, "b": b}
        if dice.random() < 0.5:
            link["cost"] = dice.choice([4, 19, 100, 2000, 20000])
        if dice.random() < 0.2:
            link["cost_b"] = dice.choice([4, 19, 100, 2000, 20000])
        links.append(link)
    dice.shuffle(links)
    return links


def _streams(dice, endpoints):
    """Groups are mostly apart; some are shared by two sources, some share a MAC address, some are never snooped."""
    groups = ["239.1.1.1", "239.1.1.2", "239.129.1.1", "239.2.0.77", "224.0.0.77", "239.3.3.3", "239.4.4.4"]
    streams = []
    for i in range(dice.randint(2, 6)):
        streams.append({"id": f"V{i + 1}", "source": dice.choice(endpoints)["id"], "group": dice.choice(groups),
                        "port": 5004 + i, "bytes": dice.randint(100, 1400)})
    wanted = [(e["id"], s) for e in endpoints for s in streams if s["source"] != e["id"]]
    chosen = dice.sample(wanted, min(len(wanted), dice.randint(1, 8)))
    return streams, [{"receiver": e, "stream": s["id"]} for e, s in chosen]


def network(seed, number):
    dice = random.Random(f"{seed}/{number}")
    kind = KINDS[number % len(KINDS)]
    cut = number % CUT_EVERY == 1
    names = [f"S{i + 1}" for i in range(dice.randint(3, 7) if kind == "ring" else dice.randint(2, 7))]
    switches = [{"id": name} for name in names]
    for switch in switches:
        if dice.random() < 0.4:
            switch["priority"] = 4096 * dice.randint(0, 15)
    links = _links(kind, dice, names)
    endpoints = [{"id": f"E{i + 1}", "switch": dice.choice(names)} for i in range(dice.randint(3, 8))]
    streams, subscriptions = _streams(dice, endpoints)
    drawn = {"switches": switches, "links": links, "endpoints": endpoints, "streams": streams,
             "subscriptions": subscriptions, "igmp": dice.choice([2, 2, 3]),
             "querier": dice.choice(names) if cut or dice.random() < 0.85 else None,
             "querier_address": dice.choice(["auto", "auto", "auto", "0.0.0.0"]),
             "snooping": cut or dice.random() < 0.9, "stp": kind != "tree" or dice.random() < 0.5}
    if not cut and dice.random() < 0.25:
        dice.choice(switches)["snooping"] = False
    if cut:
        names = sorted({f"{link['a']}-{link['b']}" for link in links})
        drawn["cut"] = dice.sample(names, 2 if len(names) > 1 and dice.random() < 0.3 else 1)
    return kind, drawn
