#!/usr/bin/env python3
"""measure.py RUNS COMMAND...: median wall and CPU seconds, peak memory and exit code of a command's runs."""
import os, statistics, subprocess, sys, time

runs, command = int(sys.argv[1]), sys.argv[2:]
wall, cpu, peak, codes = [], [], 0, set()
for _ in range(runs):
    start = time.monotonic()
    process = subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    _, status, used = os.wait4(process.pid, 0)
    wall.append(time.monotonic() - start)
    cpu.append(used.ru_utime + used.ru_stime)
    peak = max(peak, used.ru_maxrss)
    codes.add(os.waitstatus_to_exitcode(status))
print(f"wall {statistics.median(wall):.2f} s, CPU {statistics.median(cpu):.2f} s, peak {peak / 1024:.0f} MB, exit {sorted(codes)}")
