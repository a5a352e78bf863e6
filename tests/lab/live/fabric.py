"""Real Linux bridges joined by veth pairs. All bridges stand in one namespace, each endpoint in one of its own."""
import json
import os
import time

from namespaces import LabError, inside, new_namespace, run, set_kernel_value

# Hundredths of a second. The first two are the kernel's least; the others make what is learned fade within seconds.
FORWARD_DELAY, MAX_AGE, HELLO = 200, 600, 100
QUERY, RESPONSE, MEMBERSHIP, QUERIER_GONE = 200, 100, 600, 600
HEARD_WITHIN = 3.2  # seconds; ports begin to forward after 4


class Fabric:
    def __init__(self, network):
        self.network = network
        self.down = set()
        self.bridges = self._fresh()
        self.hosts = {e["id"]: self._fresh() for e in network.endpoints}
        self.started = time.monotonic()
        with inside(self.bridges):
            run("ip", "-batch", "-", lines=list(self._commands()))
        for end in network.endpoints:
            with inside(self.hosts[end["id"]]):
                run("ip", "-batch", "-", lines=[f"addr add {end['address']}/16 dev eth0", "link set eth0 up"])
                set_kernel_value("ipv4/conf/eth0/force_igmp_version", network.igmp)

    @staticmethod
    def _fresh():
        namespace = new_namespace()
        for which in ("all", "default"):
            set_kernel_value(f"ipv6/conf/{which}/disable_ipv6", 1)
        return namespace

    def _commands(self):
        net = self.network
        for s in net.switches:
            yield (f"link add {s['dev']} address {s['mac']} type bridge stp_state {int(net.stp)}"
                   f" priority {s['priority']} forward_delay {FORWARD_DELAY} hello_time {HELLO} max_age {MAX_AGE}"
                   f" mcast_snooping {int(s['snooping'])} mcast_igmp_version {net.igmp}"
                   f" mcast_query_interval {QUERY} mcast_startup_query_interval {QUERY}"
                   f" mcast_query_response_interval {RESPONSE} mcast_membership_interval {MEMBERSHIP}"
                   f" mcast_querier_interval {QUERIER_GONE}")
            if s["id"] == net.querier and net.querier_address != "0.0.0.0":
                address = "10.0.0.1" if net.querier_address == "auto" else net.querier_address
                yield f"addr add {address}/8 dev {s['dev']}"
                yield f"link set {s['dev']} type bridge mcast_query_use_ifaddr 1"
        ports = []
        for l in net.links:
            yield f"link add {l['dev_a']} type veth peer name {l['dev_b']}"
            ports += [(l[f"dev_{end}"], l[end], f" cost {l[f'cost_{end}']}") for end in "ab"]
        for e in net.endpoints:
            yield f"link add {e['dev']} type veth peer name eth0 netns /proc/{os.getpid()}/fd/{self.hosts[e['id']]}"
            ports.append((e["dev"], e["switch"], ""))
        for dev, switch, cost in ports:  # port numbers, the last tie-break of spanning tree, follow this order
            yield f"link set {dev} master {net.bridge_of[switch]}"
            if cost:
                yield f"link set {dev} type bridge_slave{cost}"
        for dev in [s["dev"] for s in net.switches] + [p[0] for p in ports]:
            yield f"link set {dev} up"

    def cut(self, name):
        link = next((l for l in self.network.links if l["id"] == name), None)
        if link is None:
            raise LabError(f"there is no link {name} to cut")
        with inside(self.bridges):
            run("ip", "-batch", "-", lines=[f"link set {link['dev_a']} down", f"link set {link['dev_b']} down"])
        self.down.add(name)

    def start_querier(self):
        with inside(self.bridges):
            run("ip", "link", "set", self.network.bridge_of[self.network.querier], "type", "bridge", "mcast_querier",
                "1")

    def tree(self):
        """The state of each port by (link, switch), and the root that each switch follows."""
        with inside(self.bridges):
            shown = {x["ifname"]: x.get("linkinfo", {}) for x in json.loads(run("ip", "-j", "-d", "link", "show"))}
        switch_of = {s["mac"]: s["id"] for s in self.network.switches}
        states, roots = {}, {s["id"]: s["id"] for s in self.network.switches}
        for link in self.network.links:
            for end in "ab":
                port = shown[link[f"dev_{end}"]]["info_slave_data"]
                states[link["id"], link[end]] = port["state"]
                bridge = shown[self.network.bridge_of[link[end]]]["info_data"]
                if bridge["root_port"] and bridge["root_port"] == int(port["no"], 16):
                    # "8000.2:68:36:0:0:1": octets without leading zeros
                    octets = port["root_id"].split(".", 1)[1].split(":")
                    roots[link[end]] = switch_of[":".join(o.zfill(2) for o in octets)]
        return states, roots

    def learned(self):
        """What snooping has learned, to see whether it still changes."""
        with inside(self.bridges):
            shown = json.loads(run("bridge", "-j", "mdb", "show") or "[]")
        return [[sorted((m["dev"], m["port"], m["grp"]) for m in x.get("mdb", [])),
                 sorted((b, p["port"]) for b, ports in x.get("router", {}).items() for p in ports)] for x in shown]

    def wait_for_tree(self, least=0.0, most=30.0):
        """Until every part agrees on its root and no port is on its way, three looks in a row."""
        net, begun, same, before = self.network, time.monotonic(), 0, None
        up = [l for l in net.links if l["id"] not in self.down]
        while time.monotonic() - begun < most:
            states, roots = self.tree()
            if net.stp and up and not self.down and time.monotonic() - self.started > HEARD_WITHIN:
                if all(roots[l["a"]] != roots[l["b"]] for l in up):
                    raise LabError("no bridge hears BPDUs (older kernels drop them outside the first namespace)")
            settled = all(roots[l["a"]] == roots[l["b"]] or not net.stp for l in up) and all(
                {states[l["id"], l["a"]], states[l["id"], l["b"]]} <= {"forwarding", "blocking"}
                and "forwarding" in (states[l["id"], l["a"]], states[l["id"], l["b"]]) for l in up)
            same = same + 1 if settled and (states, roots) == before else 0
            before = (states, roots)
            if same >= 2 and time.monotonic() - begun >= least:
                return
            time.sleep(0.2)
        raise LabError(f"spanning tree did not settle in {most:g} s")
