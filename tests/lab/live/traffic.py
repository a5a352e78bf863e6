"""Real multicast: joined sockets in the endpoints, UDP streams from them, and a count of what crossed each link."""
import collections
import socket
import struct
import time

from namespaces import LabError, inside

PACKETS = 12   # of each stream in one window
PAUSE = 0.008  # seconds between two packets of a stream
ALL_PROTOCOLS = 0x0003
SOL_PACKET, PACKET_STATISTICS = 263, 6
SO_RCVBUFFORCE = 33


def join_all(fabric):
    """One socket per endpoint and group; the kernel sends the IGMP reports. Held open they stay joined."""
    group_of = {s["id"]: s["group"] for s in fabric.network.streams}
    joined = {}
    for s in fabric.network.subscriptions:
        key = s["receiver"], group_of[s["stream"]]
        if key in joined:
            continue
        address = fabric.network.address_of[key[0]]
        with inside(fabric.hosts[key[0]]):
            joined[key] = socket.socket(socket.AF_INET, socket.SOCK_DGRAM)
        joined[key].setsockopt(socket.IPPROTO_IP, socket.IP_ADD_MEMBERSHIP,
                               socket.inet_aton(key[1]) + socket.inet_aton(address))
    return joined


class Counter:
    """Counts at every port of the fabric: arriving frames, also those that a blocked port then drops, and frames that
    leave toward an endpoint."""

    def __init__(self, fabric):
        net = fabric.network
        self.directions = net.directions()
        self.stream_of = {(socket.inet_aton(net.address_of[s["source"]]), socket.inet_aton(s["group"]), s["port"]):
                          s["id"] for s in net.streams}
        self.counts = collections.Counter()
        with inside(fabric.bridges):
            self.socket = socket.socket(socket.AF_PACKET, socket.SOCK_RAW, socket.htons(ALL_PROTOCOLS))
        try:
            self.socket.setsockopt(socket.SOL_SOCKET, SO_RCVBUFFORCE, 16 << 20)
        except PermissionError:  # a root of its own user namespace only: the system's usual limit holds
            self.socket.setsockopt(socket.SOL_SOCKET, socket.SO_RCVBUF, 16 << 20)
        self.socket.setblocking(False)

    def drain(self):
        while True:
            try:
                frame, where = self.socket.recvfrom(96)
            except BlockingIOError:
                return
            if frame[12:14] != b"\x08\x00" or frame[23] != socket.IPPROTO_UDP:
                continue
            stream = self.stream_of.get((frame[26:30], frame[30:34], struct.unpack("!H", frame[36:38])[0]))
            direction = self.directions.get((where[0], where[2] != socket.PACKET_OUTGOING))
            if stream and direction:
                self.counts[direction, stream] += 1

    def close(self):
        self.drain()
        lost = struct.unpack("II", self.socket.getsockopt(SOL_PACKET, PACKET_STATISTICS, 8))[1]
        self.socket.close()
        if lost:
            raise LabError(f"the counter lost {lost} packets")


def window(fabric):
    """Sends PACKETS of every stream and tells the streams of each direction; None if one came through in part only,
    which means that the network was still learning."""
    senders = []
    for s in fabric.network.streams:
        address = fabric.network.address_of[s["source"]]
        with inside(fabric.hosts[s["source"]]):
            sender = socket.socket(socket.AF_INET, socket.SOCK_DGRAM)
        sender.bind((address, 0))
        sender.setsockopt(socket.IPPROTO_IP, socket.IP_MULTICAST_IF, socket.inet_aton(address))
        sender.setsockopt(socket.IPPROTO_IP, socket.IP_MULTICAST_LOOP, 0)
        sender.setsockopt(socket.IPPROTO_IP, socket.IP_MULTICAST_TTL, 8)
        senders.append((sender, (s["group"], s["port"]), bytes(s["bytes"])))
    counter = Counter(fabric)
    for _ in range(PACKETS):
        for sender, to, payload in senders:
            sender.sendto(payload, to)
        time.sleep(PAUSE)
        counter.drain()
    time.sleep(0.15)
    counter.close()
    for sender, _, _ in senders:
        sender.close()
    loads = {direction: [] for direction in counter.directions.values()}
    for (direction, stream), count in counter.counts.items():
        if count != PACKETS:
            return None
        loads[direction].append(stream)
    return {direction: sorted(streams) for direction, streams in loads.items()}
