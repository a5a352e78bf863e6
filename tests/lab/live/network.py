"""The description of a laboratory network (form: tests/reference/lab/SOURCE.md), with the names of its interfaces."""
from namespaces import LabError

MOST = {"switches": 24, "links": 64, "endpoints": 64, "streams": 32, "subscriptions": 512, "cut": 4}


class Network:
    def __init__(self, given):
        for name, most in MOST.items():
            if len(given.get(name, [])) > most:
                raise LabError(f"more than {most} {name}")
        self.stp = given.get("stp", True)
        self.igmp = given.get("igmp", 2)
        self.querier = given.get("querier")
        self.querier_address = given.get("querier_address", "auto")
        self.cut = given.get("cut", [])
        self.subscriptions = given.get("subscriptions", [])
        self.switches = [self._switch(i, s, given.get("snooping", True)) for i, s in enumerate(given["switches"])]
        self.bridge_of = {s["id"]: s["dev"] for s in self.switches}
        self.links, seen = [], {}
        for i, link in enumerate(given.get("links", [])):
            name = link.get("id", f"{link['a']}-{link['b']}")
            seen[name] = seen.get(name, 0) + 1
            if seen[name] > 1:
                name += f"#{seen[name]}"
            cost = link.get("cost", 2000)
            self.links.append({"id": name, "a": link["a"], "b": link["b"], "dev_a": f"l{i}a", "dev_b": f"l{i}b",
                               "cost_a": link.get("cost_a", cost), "cost_b": link.get("cost_b", cost)})
        self.endpoints = [dict(e, dev=f"e{i}", address=f"10.1.{i // 250}.{i % 250 + 1}")
                          for i, e in enumerate(given.get("endpoints", []))]
        self.address_of = {e["id"]: e["address"] for e in self.endpoints}
        self.streams = [{"port": 5004, "bytes": 1000, **s} for s in given.get("streams", [])]
        if not self.stp and self._has_loop():
            raise LabError("a loop without spanning tree would be a storm: refused")

    @staticmethod
    def _switch(place, given, snooping):
        number = place + 1  # addresses rise with the place in the list, so that the earlier wins among equal priorities
        return {"id": given["id"], "dev": f"b{place}", "priority": given.get("priority", 32768),
                "snooping": given.get("snooping", snooping),
                "mac": given.get("mac", f"02:68:36:00:00:{number:02x}").replace("-", ":").lower()}

    def _has_loop(self):
        part = {s["id"]: s["id"] for s in self.switches}

        def top(name):
            while part[name] != name:
                name = part[name]
            return name

        for link in self.links:
            a, b = top(link["a"]), top(link["b"])
            if a == b:
                return True
            part[a] = b
        return False

    def directions(self):
        """Every link and direction: (kind, link, from, to) by (interface in the fabric, arriving there)."""
        found = {}
        for link in self.links:
            found[link["dev_b"], True] = ("link", link["id"], link["a"], link["b"])
            found[link["dev_a"], True] = ("link", link["id"], link["b"], link["a"])
        for end in self.endpoints:
            found[end["dev"], True] = ("access", end["id"], end["id"], end["switch"])
            found[end["dev"], False] = ("access", end["id"], end["switch"], end["id"])
        return found
