"""Network namespaces without names: only this process holds them, so the kernel removes them and all that is in them
when it ends, however it ends."""
import contextlib
import ctypes
import os
import signal
import subprocess
import sys

CLONE_NEWNET = 0x40000000
PR_SET_PDEATHSIG = 1
_libc = ctypes.CDLL(None, use_errno=True)


class LabError(Exception):
    """Why a network was not measured, in one sentence."""


def _checked(what, result):
    if result != 0:
        number = ctypes.get_errno()
        raise OSError(number, f"{what}: {os.strerror(number)}")


def die_with_parent(parent):
    """The kernel kills this process when the one that started it ends. `parent` closes the gap before this call."""
    _checked("prctl", _libc.prctl(PR_SET_PDEATHSIG, signal.SIGKILL, 0, 0, 0))
    if os.getppid() != parent:
        sys.exit("the parent has ended")


def _present():
    return os.open("/proc/thread-self/ns/net", os.O_RDONLY | os.O_CLOEXEC)


def new_namespace():
    """Moves this process to a fresh namespace and returns the descriptor that holds it."""
    _checked("a network namespace", _libc.unshare(CLONE_NEWNET))
    return _present()


@contextlib.contextmanager
def inside(namespace):
    """Sockets and programs of the block belong to that namespace; sockets stay there afterwards."""
    before = _present()
    _checked("setns", _libc.setns(namespace, CLONE_NEWNET))
    try:
        yield
    finally:
        _checked("setns", _libc.setns(before, CLONE_NEWNET))
        os.close(before)


def run(*command, lines=None):
    """Output of a program in the present namespace."""
    text = None if lines is None else "\n".join(lines) + "\n"
    try:
        done = subprocess.run(command, input=text, capture_output=True, text=True, timeout=20, check=False)
    except FileNotFoundError:
        raise LabError(f"the program {command[0]} is missing") from None
    if done.returncode != 0:
        said = done.stderr.strip().splitlines() or ["failed"]
        raise LabError(f"{' '.join(command)}: {said[0]}")
    return done.stdout


def set_kernel_value(name, value):
    """Writes a value below /proc/sys/net of the present namespace; False where the kernel has none of that name."""
    try:
        with open(f"/proc/sys/net/{name}", "w", encoding="ascii") as file:
            file.write(str(value))
    except FileNotFoundError:
        return False
    return True
