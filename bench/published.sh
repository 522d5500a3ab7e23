#!/usr/bin/env bash
# What the published program takes: cold start against a bare console program, the whole ABC corpus, broken scores.
# Usage: bench/published.sh SHARED     (the folder of outside material; needs python3)
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
shared=$(realpath "$1")
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
measure() { python3 bench/measure.py "$@"; }

dotnet publish src/Stridewright.Cli -c Release -r linux-x64 --no-self-contained -o "$work/program" >"$work/log"
mkdir "$work/bare"
cat >"$work/bare/bare.csproj" <<'P'
<Project Sdk="Microsoft.NET.Sdk"><PropertyGroup><OutputType>Exe</OutputType><TargetFramework>net10.0</TargetFramework>
<PublishReadyToRun>true</PublishReadyToRun></PropertyGroup></Project>
P
echo 'System.Console.WriteLine("hello");' >"$work/bare/bare.cs"
dotnet publish "$work/bare" -c Release -r linux-x64 --no-self-contained -o "$work/bare/out" >"$work/log"

program="$work/program/stridewright"
echo "bare console program: $(measure 11 "$work/bare/out/bare")"
echo "arrange one tune, MusicXML: $(measure 11 "$program" arrange samples/ferry-bell.abc --format musicxml --replace --out "$work/one")"
echo "arrange one tune, all formats: $(measure 5 "$program" arrange samples/ferry-bell.abc --replace --out "$work/all")"

tunes=$(grep -lc '^X:' "$shared"/corpus/abc/*.abc | wc -l)
start=$(date +%s.%N)
echo "ABC corpus of $tunes tunes to MusicXML: $(measure 1 "$program" arrange "$shared/corpus/abc" --format musicxml --out "$work/corpus")"
echo "  $(ls "$work/corpus" | wc -l) scores, $(echo "$tunes / ($(date +%s.%N) - $start)" | bc -l | cut -c1-5) tunes per second"

for file in "$shared"/corpus/musicxml/reject/*; do
    echo "$(basename "$file"): $(measure 3 "$program" arrange "$file" --format musicxml --out "$work/broken")"
    "$program" arrange "$file" --format musicxml --out "$work/broken" 2>&1 >/dev/null | sed "s|$shared/corpus/musicxml/reject/|    |" | head -n 2 || true
done
