#!/usr/bin/env bash
# Shows that an archive runs where nothing is installed: a root file system with the C and C++ libraries and nothing else, no network, no SDK, no runtime.
# Takes the archive for Linux of this computer's kind. Usage: first-run.sh ARCHIVE.tar.gz   (as root, or where users may make namespaces)
set -euo pipefail
archive=$(realpath "$1")
root=$(mktemp -d)
trap 'rm -rf "$root"' EXIT

mkdir -p "$root"/{tmp,proc,dev,etc,opt,desk}
chmod 1777 "$root/tmp"
tar -xzf "$archive" -C "$root/opt" --strip-components=1
program=$root/opt/holdfast
# What the program itself is linked against, with the loader, and not one file more.
ldd "$program" | grep -o '/[^ ]*' | sort -u | while read -r library; do
  install -D "$(realpath "$library")" "$root$library"
done
echo "In the root beside the archive:"
(cd "$root" && find . -path ./opt -prune -o -type f -print | sort)

# Root stays root; anybody else becomes root of a room of her own. No network in it but the computer's own address.
as=(unshare --mount --net --pid --fork)
[ "$(id -u)" = 0 ] || as=(unshare --user --map-root-user --mount --net --pid --fork)
# The room is made by the tools of this computer, and left to the program alone.
cat > "$root.room" <<'ROOM'
set -eu
mount -t proc proc "$1/proc"
touch "$1/dev/null" "$1/dev/urandom"
mount --bind /dev/null "$1/dev/null"
mount --bind /dev/urandom "$1/dev/urandom"
ip link set lo up 2>/dev/null || true
root=$1
chroot=$(command -v chroot)
inside() { env -i HOME=/desk PATH=/nowhere "$chroot" "$root" "$@"; }
inside /opt/holdfast --version
started=$(date +%s%N)
inside /opt/holdfast demo --to /desk/demo > "$root/desk/demo.txt" 2>/dev/null
echo "demo: $(( ($(date +%s%N) - started) / 1000000 )) ms; $(tail -n 3 "$root/desk/demo.txt" | head -n 1)"
grep -m 1 -E '^[0-9]+ hold|hold,' "$root/desk/demo.txt" || true
started=$(date +%s%N)
inside /opt/holdfast demo --bench --no-open --to /desk/bench > "$root/desk/address" 2>/dev/null &
bench=$!
trap 'kill $bench 2>/dev/null || true' EXIT
until grep -q '^http' "$root/desk/address" 2>/dev/null; do kill -0 $bench; sleep 0.05; done
address=$(grep -m 1 '^http' "$root/desk/address")
echo "bench: address after $(( ($(date +%s%N) - started) / 1000000 )) ms"
jar=$root/desk/jar
page=$(curl -sS -L -c "$jar" -b "$jar" "$address")
echo "bench: first page after $(( ($(date +%s%N) - started) / 1000000 )) ms, ${#page} characters"
case $page in *Holdfast*) ;; *) echo "The page does not name the program." >&2; exit 1 ;; esac
place=${address%/\?*}
for part in $(printf '%s' "$page" | grep -oE '(href|src)="[^"]+\.(css|js)"' | cut -d'"' -f2 | sort -u); do
  code=$(curl -sS -o /dev/null -w '%{http_code}' -b "$jar" "$place/${part#/}")
  echo "bench: $code $part"
  [ "$code" = 200 ]
done
ROOM
trap 'rm -rf "$root" "$root.room"' EXIT
"${as[@]}" bash "$root.room" "$root"
