#!/usr/bin/env bash
# Makes what is handed out: an archive for each kind of computer, the tool package, the bill of materials and the checksums, in artifacts/pack.
# Nothing of this computer and no date goes in (docs/shipping.md). Usage: pack.sh [linux-x64|linux-arm64|win-x64|osx-arm64|tool ...]; all of them when none is named.
set -euo pipefail
cd "$(dirname "$0")/.."
for needed in dotnet git jq zip tar gzip sha256sum; do
  command -v "$needed" >/dev/null 2>&1 || { echo "pack.sh needs $needed." >&2; exit 1; }
done
[ $# -gt 0 ] || set -- linux-x64 linux-arm64 win-x64 osx-arm64 tool

export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1 DOTNET_CLI_UI_LANGUAGE=en TZ=UTC LC_ALL=C
version=$(sed -n 's:.*<Version>\(.*\)</Version>.*:\1:p' Directory.Build.props)
epoch=$(git log -1 --format=%ct)
out=artifacts/pack
# A place of its own: what is built here knows no folder of this computer, what is built for work does. The analyzers have read the same code in the ordinary build.
build=(-c Release --artifacts-path "$out/build" -v q -p:RunAnalyzers=false -p:ContinuousIntegrationBuild=true -p:DebugType=embedded)
mkdir -p "$out"

# What the program says of itself, once for all systems.
texts=$out/texts
dotnet build src/Holdfast.Cli "${build[@]}"
rm -rf "$texts"
mkdir -p "$texts/man/man1" "$texts/bash-completion/completions" "$texts/zsh/site-functions" "$texts/fish/vendor_completions.d"
holdfast() { dotnet "$out/build/bin/Holdfast.Cli/release/Holdfast.Cli.dll" "$@"; }
holdfast manual > "$texts/man/man1/holdfast.1"
holdfast complete bash > "$texts/bash-completion/completions/holdfast"
holdfast complete zsh > "$texts/zsh/site-functions/_holdfast"
holdfast complete fish > "$texts/fish/vendor_completions.d/holdfast.fish"

# Licences and notices as the packages bring them, beside the list that the tests hold complete.
licences() {
  local deps=$1 to=$2 id place name
  mkdir -p "$to"
  cp THIRD-PARTY.md docs/licences/Apache-2.0.txt "$to/"
  cp src/Holdfast.Reports/Fonts/LICENSE-OFL.txt "$to/LiberationSans-OFL-1.1.txt"
  while IFS=$'\t' read -r id place; do
    find "$cache/$place" -maxdepth 1 -type f \( -iname 'licen*' -o -iname 'third-party*' -o -iname 'notice*' \) | sort | while read -r name; do
      install -m 644 "$name" "$to/$id-$(basename "$name" | tr 'A-Z' 'a-z')"
    done
  done < <(parts "$deps")
}

# Name and place in the cache of packages, of every package and every part of the runtime.
parts() {
  jq -r '.libraries | to_entries[] | select(.value.type == "package" or .value.type == "runtimepack") | .key | sub("^runtimepack\\."; "") | split("/") | "\(.[0])\t\(.[0] | ascii_downcase)/\(.[1])"' "$1"
}

# CycloneDX 1.6. Neither date nor serial number: they would change with every run.
bill() {
  local id place
  while IFS=$'\t' read -r id place; do
    printf '%s\t%s\t%s\t%s\n' "$id" "${place#*/}" "$(awk -F' *[|] *' -v id="$id" '$2 == id { print $4 }' THIRD-PARTY.md)" \
      "$(base64 -d < "$(find "$cache/$place" -maxdepth 1 -name '*.nupkg.sha512')" | od -An -tx1 -v | tr -d ' \n')"
  done < <(parts "$1") | jq -RnS --arg version "$version" '
    def part(name; version; licence): { type: "library", name: name, version: version, licenses: [{ license: { id: licence } }] };
    { bomFormat: "CycloneDX", specVersion: "1.6", version: 1,
      metadata: { component: { type: "application", name: "holdfast", version: $version, licenses: [{ license: { id: "MIT" } }] } },
      components: ([inputs | split("\t") | part(.[0]; .[1]; if .[2] == "" then "MIT" else .[2] end)
        + { purl: "pkg:nuget/\(.[0])@\(.[1])", "bom-ref": "pkg:nuget/\(.[0])@\(.[1])", hashes: [{ alg: "SHA-512", content: .[3] }] }]
        + [part("Liberation Sans"; "2.1.5"; "OFL-1.1")] | sort_by(.name)) }'
}

cache=$(dotnet nuget locals global-packages --list | sed 's/^global-packages: //')
for what in "$@"; do
  if [ "$what" = tool ]; then
    # What an earlier run left would travel along.
    rm -rf "$out/build/publish"
    dotnet pack src/Holdfast.Cli "${build[@]}" -o "$out"
    continue
  fi

  name=holdfast-$version-$what
  stage=$out/$name
  rm -rf "$stage" "$stage.tar.gz" "$stage.zip"
  dotnet publish src/Holdfast.Cli "${build[@]}" -r "$what" -o "$stage"
  if [ -e "$stage/Holdfast.Cli.exe" ]; then mv "$stage/Holdfast.Cli.exe" "$stage/holdfast.exe"; else mv "$stage/Holdfast.Cli" "$stage/holdfast"; fi
  cp README.md LICENSE CHANGELOG.md "$stage/"
  deps=$out/build/obj/Holdfast.Cli/release_$what/Holdfast.Cli.deps.json
  licences "$deps" "$stage/licences"
  bill "$deps" > "$stage/holdfast.cdx.json"
  case $what in win-*) ;; *) cp -r "$texts" "$stage/share" ;; esac

  find "$stage" -type d -exec chmod 755 {} + -o -type f -exec chmod 644 {} +
  [ ! -e "$stage/holdfast" ] || chmod 755 "$stage/holdfast"
  find "$stage" -exec touch -d "@$epoch" {} +
  case $what in
    win-*) (cd "$out" && find "$name" | sort | zip -q -X -9 "$name.zip" -@) ;;
    *) tar -C "$out" --sort=name --mtime="@$epoch" --owner=0 --group=0 --numeric-owner --format=ustar -cf - "$name" | gzip -9n > "$stage.tar.gz" ;;
  esac
  cp "$stage/holdfast.cdx.json" "$stage.cdx.json"
done

(cd "$out" && find . -maxdepth 1 -type f \( -name '*.tar.gz' -o -name '*.zip' -o -name '*.nupkg' -o -name '*.cdx.json' \) -printf '%P\n' | sort | xargs sha256sum > SHA256SUMS && cat SHA256SUMS)
