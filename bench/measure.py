#!/usr/bin/env python3
"""measure.py [--against SECONDS] RUNS COMMAND...: what a command takes.

Medians of wall and CPU seconds over the runs, peak memory and exit codes; with --against also the wall time in
multiples of a baseline's. The last word is the median of wall seconds, for scripts.
"""
import os, statistics, subprocess, sys, time

arguments = sys.argv[1:]
baseline = None
if arguments[0] == "--against":
    baseline = float(arguments[1])
    arguments = arguments[2:]
runs, command = int(arguments[0]), arguments[1:]
wall, cpu, peak, codes = [], [], 0, set()
for _ in range(runs):
    start = time.monotonic()
    process = subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    _, status, used = os.wait4(process.pid, 0)
    wall.append(time.monotonic() - start)
    cpu.append(used.ru_utime + used.ru_stime)
    peak = max(peak, used.ru_maxrss)
    codes.add(os.waitstatus_to_exitcode(status))
median = statistics.median(wall)
ratio = f" ({median / baseline:.1f} times the bare program)" if baseline else ""
print(
    f"wall {median:.2f} s{ratio}, CPU {statistics.median(cpu):.2f} s, peak {peak / 1024:.0f} MB, "
    f"exit {sorted(codes)}, {runs} runs: {median:.3f}"
)
