#!/usr/bin/env bash
# What the published program takes: cold start against a bare console program, the whole ABC corpus, broken scores.
# Usage: bench/published.sh SHARED     (the folder of outside material)
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
command -v python3 >/dev/null || { echo "bench/published.sh needs python3 to measure time and memory; install it" >&2; exit 2; }
[ -d "${1:-}/corpus/abc" ] || { echo "usage: bench/published.sh SHARED, where SHARED/corpus/abc holds the tunes" >&2; exit 2; }
shared=$(realpath "$1")
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

publish() { dotnet publish "$@" -c Release >"$work/log" || { cat "$work/log" >&2; exit 1; }; }
# what TEXT RUNS COMMAND...: one line of what the command takes; leaves its wall seconds in $seconds.
what() {
    local text=$1 line
    shift
    line=$(python3 bench/measure.py ${bare:+--against "$bare"} "$@")
    seconds=${line##* }
    echo "$text: ${line%:*}"
}

publish src/Stridewright.Cli -o "$work/program"
mkdir "$work/bare"
cat >"$work/bare/bare.csproj" <<'P'
<Project Sdk="Microsoft.NET.Sdk"><PropertyGroup><OutputType>Exe</OutputType><TargetFramework>net10.0</TargetFramework>
<PublishReadyToRun>true</PublishReadyToRun></PropertyGroup></Project>
P
echo 'System.Console.WriteLine("hello");' >"$work/bare/bare.cs"
publish "$work/bare" -r linux-x64 --no-self-contained -o "$work/bare/out"

program="$work/program/stridewright"
echo "$(nproc) cores, load $(cut -d' ' -f1-3 /proc/loadavg)"
bare=""
what "bare console program" 15 "$work/bare/out/bare"
bare=$seconds
what "arrange one tune, MusicXML" 15 "$program" arrange samples/ferry-bell.abc --format musicxml --replace --out "$work/one"
what "arrange one tune, all formats" 7 "$program" arrange samples/ferry-bell.abc --replace --out "$work/all"

# MusicXML alone must not need the parts that draw and play.
cp -r "$work/program" "$work/lean"
rm -rf "$work/lean"/{ClearScript*,*Skia*,Stridewright.Engraving*,Stridewright.Sound*,engraving}
"$work/lean/stridewright" arrange samples/ferry-bell.abc --format musicxml --out "$work/lean-out" >/dev/null
cmp "$work/lean-out/ferry-bell.musicxml" "$work/one/ferry-bell.musicxml"
echo "without its engraving and sound parts the program writes the same MusicXML"

tunes=$(grep -h '^X:' "$shared"/corpus/abc/*.abc | wc -l)
what "ABC corpus of $tunes tunes to MusicXML" 3 "$program" arrange "$shared/corpus/abc" --format musicxml --out "$work/corpus" --replace
echo "  $(find "$work/corpus" -name '*.musicxml' | wc -l) scores, $(awk "BEGIN { printf \"%.1f\", $tunes / $seconds }") tunes per second"

for file in "$shared"/corpus/musicxml/reject/*; do
    what "$(basename "$file")" 5 "$program" arrange "$file" --format musicxml --out "$work/broken"
    "$program" arrange "$file" --format musicxml --out "$work/broken" 2>&1 >/dev/null | sed "s|$shared/corpus/musicxml/reject/|    |" | head -n 2 || true
done
