"""Capturing programs of the host: real programs in real pseudo-terminals."""

from __future__ import annotations

import os
import signal
import sys
import threading
import time
from collections.abc import Callable
from pathlib import Path

import pytest

from fit.errors import CaptureError
from fit.session import EventKind, Session, Waits
from fit.source import capture as capture_module, pseudo_terminal
from fit.source.builder import SessionBuilder
from fit.source.capture import Limits, capture
from fit.source.keys import read_key_script
from fit.units import Size

pytestmark = pytest.mark.skipif(not pseudo_terminal.HAS_PSEUDO_TERMINALS, reason="no pseudo-terminals here")

DESK = Size(25, 80)
ASK = 'printf "Port? "; read port; echo "High water at $port"; exit 3'


def shell(
    command: str,
    keys: str | None = None,
    *,
    size: Size = DESK,
    terminal: str = "vt100",
    limits: Limits | None = None,
) -> Session:
    steps = None if keys is None else read_key_script(keys.encode(), "keys")
    return capture(
        ["sh", "-c", command], size=size, terminal=terminal, steps=steps, limits=limits or Limits(20)
    )


def typed(session: Session) -> list[tuple[int, bytes]]:
    return [(event.at, event.data) for event in session.events if event.kind is EventKind.INPUT]


def notes(session: Session) -> list[bytes]:
    return [event.data for event in session.events if event.kind is EventKind.NOTE]


def is_alive(pid: int) -> bool:
    try:
        os.kill(pid, 0)
    except ProcessLookupError:
        return False
    return True


def wait_until(holds: Callable[[], bool], seconds: float = 20) -> None:
    deadline = time.monotonic() + seconds
    while not holds() and time.monotonic() < deadline:
        time.sleep(0.02)


def test_a_program_and_what_was_typed() -> None:
    session = shell(ASK, r"see Port\? => east<enter>")
    assert session.output == b"Port? east\r\nHigh water at east\r\n"
    assert typed(session) == [(6, b"east\r")]
    assert (session.waits, session.ending, session.exit_status) == (Waits.INPUTS, "exited", 3)
    assert (session.size, session.dialect, session.remarks) == (DESK, "vt100", ())
    assert session.command is not None
    assert session.command.startswith("sh -c 'printf")
    assert list(session.clock.seconds) == sorted(session.clock.seconds)
    assert session.clock.offsets[0] == 0


@pytest.mark.parametrize(("size", "terminal"), [(DESK, "vt100"), (Size(8, 40), "adm3a")])
def test_what_the_program_is_told(size: Size, terminal: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("COLUMNS", "132")
    monkeypatch.setenv("LINES", "50")
    session = shell("stty size; echo $TERM ${COLUMNS-none} ${LINES-none}", size=size, terminal=terminal)
    assert session.output == f"{size.rows} {size.columns}\r\n{terminal} none none\r\n".encode()
    assert session.waits is Waits.INFERRED


def test_where_the_terminal_echoes_is_noted() -> None:
    script = "printf 'a '; read a; stty -echo; printf 'b '; read b; printf 'c '; read c"
    session = shell(script, "see a => x<enter>\nsee b => y<enter>\nsee c => z<enter>")
    assert session.output == b"a x\r\nb c "
    assert notes(session) == [b"the terminal echoes what is typed", b"the terminal does not echo"]


def test_cursor_keys_follow_the_mode_of_the_program() -> None:
    script = "stty raw -echo; printf '\\033[?1h> '; dd bs=3 count=1 2>/dev/null | od -An -c"
    assert b"033   O   A" in shell(script, "see > => <up>").output


def test_killed_by_a_signal() -> None:
    assert shell("kill -9 $$").exit_status == 137


def test_much_output() -> None:
    session = shell("yes 'the lamp is lit' | head -n 20000")
    assert session.output == b"the lamp is lit\r\n" * 20000


def test_more_is_typed_than_the_terminal_takes_at_once() -> None:
    script = "stty raw -echo; printf '> '; sleep 0.5; dd bs=1 count=20000 2>/dev/null | wc -c"
    session = shell(script, f"see > => {'x' * 20000}")
    assert b"20000" in session.output


def test_a_program_that_is_not_there() -> None:
    with pytest.raises(CaptureError) as caught:
        capture(["no-such-lamp"], size=DESK, terminal="vt100")
    assert (
        str(caught.value)
        == "no-such-lamp: cannot be run: No such file or directory; check the command behind --"
    )


def test_a_system_without_pseudo_terminals(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(pseudo_terminal, "HAS_PSEUDO_TERMINALS", False)
    with pytest.raises(CaptureError) as caught:
        shell("true")
    assert str(caught.value) == (
        "this system has no pseudo-terminals, so no program can be captured here; "
        "record the session on another computer, or paste what the program prints"
    )


@pytest.mark.parametrize(
    ("limits", "keys", "ending", "remark"),
    [
        (Limits(2), None, "limit", "The capture ended at the limit of 2 seconds."),
        (Limits(20, output=10), None, "limit", "The capture ended at the limit of 10 bytes of output."),
        (
            Limits(20, step=0.3),
            "see never => x",
            "limit",
            "The step in line 1 of the key script did not come due within 0.3 seconds.",
        ),
        (
            Limits(20, step=0.3),
            "quiet 0.1 => x",
            "limit",
            "The program still ran when its key script had ended.",
        ),
    ],
    ids=["time", "output", "step", "script"],
)
def test_limits(tmp_path: Path, limits: Limits, keys: str | None, ending: str, remark: str) -> None:
    session = shell(
        f"echo $$ > {tmp_path}/pid; stty -echo; echo the lamp; cat; sleep 60", keys, limits=limits
    )
    assert (session.ending, session.exit_status, session.remarks) == (ending, None, (remark,))
    assert b"the lamp\r\n".startswith(session.output)
    assert not is_alive(int((tmp_path / "pid").read_text()))


def test_steps_that_never_came_due() -> None:
    session = shell("echo lamp", "quiet 5 => x")
    assert session.remarks == ("The program ended before line 1 of the key script came due.",)


def test_the_program_is_hung_up_on(tmp_path: Path) -> None:
    shell(
        f"trap 'echo hung up > {tmp_path}/log; exit' HUP; echo x; while :; do sleep 0.05; done",
        limits=Limits(20, output=3),
    )
    assert (tmp_path / "log").read_text() == "hung up\n"


def test_a_program_that_ignores_it_is_killed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(pseudo_terminal, "GRACE", 0.2)
    script = f"trap '' HUP; echo $$ > {tmp_path}/pid; echo x; while :; do sleep 0.05; done"
    shell(script, limits=Limits(20, output=3))
    assert not is_alive(int((tmp_path / "pid").read_text()))


def test_an_error_of_ours_leaves_no_program_behind(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def fail(*_: object) -> None:
        raise MemoryError

    monkeypatch.setattr(SessionBuilder, "out", fail)
    with pytest.raises(MemoryError):
        shell(f"echo $$ > {tmp_path}/pid; echo x; sleep 60")
    assert not is_alive(int((tmp_path / "pid").read_text()))


@pytest.mark.parametrize("number", [signal.SIGINT, signal.SIGTERM, signal.SIGHUP])
def test_interrupted_it_keeps_what_it_had(tmp_path: Path, number: signal.Signals) -> None:
    def interrupt() -> None:
        wait_until((tmp_path / "printed").exists)
        os.kill(os.getpid(), number)

    before = signal.getsignal(number)
    threading.Thread(target=interrupt).start()
    session = shell(f"echo the lamp; echo > {tmp_path}/printed; sleep 60")
    assert (session.output, session.ending) == (b"the lamp\r\n", "interrupted")
    assert session.remarks == (
        f"The capture was interrupted ({number.name}); it holds what came until then.",
    )
    assert signal.getsignal(number) is before


def test_a_capture_in_another_thread() -> None:
    sessions: list[Session] = []
    thread = threading.Thread(target=lambda: sessions.append(shell("echo the lamp")))
    thread.start()
    thread.join(20)
    assert sessions[0].output == b"the lamp\r\n"


def test_a_program_that_is_slow_to_start_gets_its_first_key_after_its_first_output() -> None:
    session = shell("sleep 0.6; " + ASK, "quiet 0.1 => east<enter>")
    assert typed(session) == [(6, b"east\r")]


def test_nothing_of_ours_is_left_open() -> None:
    def count() -> int:
        return len(os.listdir("/proc/self/fd")) if sys.platform == "linux" else 0  # noqa: PTH208  names only

    before = count()
    shell("echo x")
    with pytest.raises(CaptureError):
        capture(["no-such-lamp"], size=DESK, terminal="vt100")
    assert count() == before
    assert capture_module.Limits().seconds is None
