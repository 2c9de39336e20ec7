#!/usr/bin/env bash
# Shows that an archive runs where nothing is installed: a root file system with the C and C++ libraries, OpenSSL and nothing else, no network, no SDK, no runtime.
# Takes the archive for Linux of this computer's kind. Usage: first-run.sh ARCHIVE.tar.gz   (as root, or where users may make namespaces)
set -euo pipefail
archive=$(realpath "$1")
root=$(mktemp -d)
trap 'rm -rf "$root"' EXIT

mkdir -p "$root"/{tmp,proc,dev,etc,opt,desk}
chmod 1777 "$root/tmp"
tar -xzf "$archive" -C "$root/opt" --strip-components=1
program=$root/opt/holdfast
# What the program itself is linked against, with the loader; OpenSSL, which the runtime opens by name for its hashes; and not one file more.
{
  ldd "$program" | grep -o '/[^ ]*'
  ldconfig -p | grep -E 'lib(ssl|crypto)\.so\.3 .*x86-64|lib(ssl|crypto)\.so\.3 .*AArch64' | grep -o '/[^ ]*$'
} | sort -u | while read -r library; do
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
since() { echo "$(( ($(date +%s%N) - started) / 1000000 )) ms"; }
started=$(date +%s%N)
echo "$(inside /opt/holdfast --version): answered after $(since)"
echo "list techniques: $(inside /opt/holdfast list techniques --as csv | tail -n +2 | wc -l)"
started=$(date +%s%N)
inside /opt/holdfast demo --to /desk/demo > "$root/desk/demo.txt" 2> "$root/desk/demo.err" || { cat "$root/desk/demo.err"; exit 1; }
echo "demo: after $(since): $(grep -E '[0-9]+ hold, ' "$root/desk/demo.txt")"
started=$(date +%s%N)
inside /opt/holdfast demo --bench --no-open --to /desk/bench > "$root/desk/address" 2>/dev/null &
bench=$!
trap 'kill $bench 2>/dev/null || true' EXIT
until grep -q '^http' "$root/desk/address" 2>/dev/null; do kill -0 $bench; sleep 0.05; done
address=$(grep -m 1 '^http' "$root/desk/address")
echo "bench: address after $(since)"
jar=$root/desk/jar
place=${address%/\?*}
# The start address exchanges its secret for a cookie.
curl -sS -o /dev/null -c "$jar" "$address"
fetch() { curl -sS -b "$jar" "$place$1"; }
page=$(fetch /)
echo "bench: first page after $(since), ${#page} characters"
case $page in *Holdfast*) ;; *) echo "The page does not name the program." >&2; exit 1 ;; esac
# A page shows numbers of the present state or says that it is working on them.
until case $(fetch /defence) in *'<ul class="claims"'*) true ;; *) false ;; esac; do kill -0 $bench; sleep 0.1; done
echo "bench: claims judged on the page after $(since)"
for part in $(printf '%s' "$page" | grep -oE '(href|src)="[^"]+\.(css|js)"' | cut -d'"' -f2 | sort -u); do
  code=$(curl -sS -o /dev/null -w '%{http_code}' -b "$jar" "$place/${part#/}")
  echo "bench: $code $part"
  [ "$code" = 200 ]
done
ROOM
trap 'rm -rf "$root" "$root.room"' EXIT
"${as[@]}" bash "$root.room" "$root"
