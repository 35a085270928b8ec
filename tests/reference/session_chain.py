#!/usr/bin/env python3
"""Recomputes the chain of a session file from docs/session-format.md, with nothing of the program.

usage: session_chain.py FILE

Prints the last chain value, or the line at which the chain breaks. Splits the bytes of a line by
its fixed ends, so that case and step are hashed as they stand in the file.
"""

import hashlib
import re
import sys

HEADER = re.compile(
    rb'\{"format":"faultwright session","version":([0-9]+),"program":"([^"\\]*)","case":(.*)'
    rb',"chain":"([0-9a-f]{64})"\}'
)
ENTRY = re.compile(
    rb'\{"entry":([0-9]+),"step":(.*),"events":"([0-9a-f]{64})","chain":"([0-9a-f]{64})"\}'
)


def whole(number):
    return number.to_bytes(8, "little")


def text(data):
    return whole(len(data)) + data


def sha(*parts):
    return hashlib.sha256(b"".join(parts)).digest()


def main(path):
    with open(path, "rb") as file:
        lines = file.read().split(b"\n")
    if lines.pop() != b"":
        sys.exit("the last line has no newline")
    header = HEADER.fullmatch(lines[0]) or sys.exit("line 1: no header")
    version, program, case, written = header.groups()
    chain = sha(text(b"faultwright session header"), whole(int(version)), text(program), text(case))
    if chain.hex().encode() != written:
        sys.exit("line 1: chain breaks")
    for number, line in enumerate(lines[1:], start=1):
        entry = ENTRY.fullmatch(line) or sys.exit(f"line {number + 1}: no entry")
        got, step, events, written = entry.groups()
        if int(got) != number:
            sys.exit(f"line {number + 1}: entry {int(got)}, {number} expected")
        events = bytes.fromhex(events.decode())
        chain = sha(text(b"faultwright session entry"), chain, whole(number), text(step), events)
        if chain.hex().encode() != written:
            sys.exit(f"line {number + 1}: chain breaks")
    print(chain.hex())


if __name__ == "__main__":
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    main(sys.argv[1])
