"""Sets of byte strings as regular expressions: longest match first, common parts shared."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field


@dataclass(slots=True)
class Trie:
    """A set of non-empty byte strings, cut at each byte."""

    children: dict[int, Trie] = field(default_factory=dict)
    ends: bool = False
    """Whether one of the strings ends here."""

    @classmethod
    def of(cls, strings: Iterable[bytes]) -> Trie:
        root = cls()
        for string in strings:
            node = root
            for byte in string:
                node = node.children.setdefault(byte, cls())
            node.ends = True
        return root

    def whole(self) -> bytes:
        """A pattern that matches the longest string of the set, without capturing groups."""
        if not self.children:
            return b""
        body = _alternatives(self._grouped(lambda child: child.whole()))
        return b"(?:%b)?" % body if self.ends else body

    def beginning(self) -> bytes:
        """A pattern that matches a beginning of a string, not the whole, that the end of the data cuts off.

        Empty where every string has one byte.
        """
        cut = self._grouped(lambda child: child._cut())  # noqa: SLF001  its own class
        return _alternatives({tail: heads for tail, heads in cut.items() if tail})

    def _cut(self) -> bytes:
        """After the byte that leads here: the end of the data, or more and then the end; empty at a leaf."""
        if not self.children:
            return b""
        more = self.beginning()
        return b"(?:\\Z|%b)" % more if more else b"\\Z"

    def _grouped(self, tail: Callable[[Trie], bytes]) -> dict[bytes, list[int]]:
        groups: dict[bytes, list[int]] = {}
        for byte, child in self.children.items():
            groups.setdefault(tail(child), []).append(byte)
        return groups


def _alternatives(groups: dict[bytes, list[int]]) -> bytes:
    branches = [byte_class(heads) + tail for tail, heads in groups.items()]
    if len(branches) < 2:
        return branches[0] if branches else b""
    return b"(?:%b)" % b"|".join(branches)


def byte_class(values: Iterable[int]) -> bytes:
    """A pattern for one byte out of these."""
    ordered = sorted(set(values))
    if len(ordered) == 1:
        return _spelled(ordered[0])
    ranges: list[list[int]] = []
    for value in ordered:
        if ranges and ranges[-1][1] == value - 1:
            ranges[-1][1] = value
        else:
            ranges.append([value, value])
    return b"[%b]" % b"".join(
        _spelled(low) + b"-" + _spelled(high) if low < high else _spelled(low) for low, high in ranges
    )


def _spelled(byte: int) -> bytes:
    """A byte in a pattern; letters and digits as they are, which ``re`` reads faster than escapes."""
    one = bytes([byte])
    return one if one.isalnum() else b"\\x%02x" % byte
