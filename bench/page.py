#!/usr/bin/env python3
"""page.py PROGRAM: what the published program's page takes on loopback.

CPU seconds until the first page is answered (five starts), milliseconds from a changed brief to the first engraved page at 32
and 152 bars (levels 3 to 6 and another seed each time, so that nothing is found ready), and memory after 200 settings.
Linux only; standard library only.
"""
import http.cookiejar, json, os, statistics, subprocess, sys, tempfile, time, urllib.request

PROGRAM, HERTZ = sys.argv[1], os.sysconf("SC_CLK_TCK")
CHORDS = ["F", "D7", "Gm", "C7", "F", "Bb", "G7", "C7"]
BARS = ["A2cA", "A2^F2", "B2dB", "G2E2", "FGAc", "d2dc", "d=BGB", "c2c2"]


def tune(bars):
    line = " | ".join(f'"{CHORDS[i % 8]}"{BARS[(i + i // 8) % 8]}' for i in range(bars))
    return f"X:1\nT:Measured\nM:2/4\nL:1/8\nK:F\n{line} |]\n"


def cpu(pid):
    with open(f"/proc/{pid}/stat") as stat:
        fields = stat.read().rsplit(")", 1)[1].split()
    return (int(fields[11]) + int(fields[12])) / HERTZ


def memory(pid, what):
    with open(f"/proc/{pid}/status") as status:
        return next(int(line.split()[1]) / 1024 for line in status if line.startswith(what))


class Host:
    def __init__(self):
        self.folder = tempfile.TemporaryDirectory()
        command = [PROGRAM, "serve", "--port", "0", "--no-browser", "--data", self.folder.name]
        self.process = subprocess.Popen(command, stdout=subprocess.PIPE, text=True)
        self.open = next(word for word in self.process.stdout.readline().split() if word.startswith("http"))
        self.base = "/".join(self.open.split("/")[:3])
        jar = urllib.request.HTTPCookieProcessor(http.cookiejar.CookieJar())
        self.client = urllib.request.build_opener(jar, urllib.request.ProxyHandler({}))
        self.client.open(self.open).read()
        self.first = cpu(self.process.pid)

    def post(self, path, body):
        data, headers = json.dumps(body).encode(), {"Content-Type": "application/json", "Origin": self.base}
        return json.load(self.client.open(urllib.request.Request(self.base + path, data, headers)))

    def bring(self, bars):
        return self.post("/api/tunes/text", {"text": tune(bars)})["id"]

    def arrange(self, tunes, seed):
        level = 3 + seed % 4
        made = self.post("/api/settings", {"tunes": tunes, "number": 1, "wishes": {"level": level, "seed": seed}})
        self.client.open(f"{self.base}/api/settings/{made['id']}/pages/1").read()

    def stop(self):
        self.process.terminate()
        self.process.wait()
        self.folder.cleanup()


def started():
    host = Host()
    host.stop()
    return host.first


print(f"{os.cpu_count()} cores, load {os.getloadavg()[0]:.2f}")
print("first page, CPU s:", " ".join(f"{seconds:.2f}" for seconds in sorted(started() for _ in range(5))))
host = Host()
seed = 0
for bars in (32, 152):
    tunes, times = host.bring(bars), []
    for turn in range(22):
        seed += 1
        begin = time.monotonic()
        host.arrange(tunes, seed)
        times.append(1000 * (time.monotonic() - begin))
    times = sorted(times[2:])
    print(f"change to first page at {bars} bars, ms: median {statistics.median(times):.0f}, most of {len(times)} {times[-1]:.0f}")
both = [host.bring(32), host.bring(152)]
for turn in range(200):
    seed += 1
    host.arrange(both[turn % 2], seed)
peak = memory(host.process.pid, "VmHWM")
time.sleep(12)
print(f"memory after 200 settings and ten seconds, MB: {memory(host.process.pid, 'VmRSS'):.0f} (most while at work {peak:.0f})")
host.stop()
