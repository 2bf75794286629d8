# Debian 12 packages, and how the missing ones are installed. Read by app/start, tests/run and .ci/run (`source`).
# The Qt platform plugins for X11 and for no display at all come with libqt6gui6, which qt6-base-dev brings along.
# libgdal-dev, libproj-dev, libpugixml-dev: the importer library alone; libseccomp-dev: the process it runs in.
# qt6-translations-l10n: the buttons of Qt in German.

build_packages=(
  g++ cmake ninja-build
  qt6-base-dev libqt6opengl6-dev qt6-charts-dev qt6-svg-dev qt6-translations-l10n libgl-dev libopengl-dev
  libeigen3-dev libboost-dev nlohmann-json3-dev libexpected-dev libfmt-dev
  libgdal-dev libproj-dev libpugixml-dev libseccomp-dev pkgconf
)

# libcgal-dev: the second route to distances; gettext: the dictionaries; poppler-utils, qpdf: read our PDF back; python3-ezdxf: reads our
# DXF back; strace: what a reader opens; ccache: a rebuild after switching branches; python3-jsonschema: a second reader of the
# schemas; desktop-file-utils, appstream, shared-mime-info, groff-base: what a desktop reads of the package.
test_packages=(libgtest-dev libgmock-dev libbenchmark-dev libcgal-dev gettext poppler-utils qpdf python3-ezdxf strace ccache
  python3-jsonschema desktop-file-utils appstream shared-mime-info groff-base)

check_packages=(git clang-format clang-tidy)

# Not needed by tests/run. Coverage-guided fuzzing (preset fuzz: tests/fuzz/run) and the memory checker of tests/memory.
fuzz_packages=(clang libclang-rt-14-dev)
memory_packages=(valgrind)
# The package: what cpack asks, and a bare system to try it in (tests/package/run).
package_packages=(dpkg-dev file debootstrap)

say() { printf '%s\n' "$*" >&2; }

# As root: the command itself. Otherwise through sudo; without sudo, says what root has to type.
as_root() {
  if [ "$(id -u)" -eq 0 ]; then
    env DEBIAN_FRONTEND=noninteractive "$@"
  elif command -v sudo >/dev/null; then
    sudo env DEBIAN_FRONTEND=noninteractive "$@"
  else
    say "Not root and there is no sudo. Let root run this, then start again:"
    say "  $*"
    return 1
  fi
}

# The packages among the arguments that are not installed, one a line.
missing_packages() {
  dpkg-query -W -f '${Package} ${db:Status-Status}\n' "$@" 2>/dev/null |
    awk -v wanted="$*" '$2 == "installed" { have[$1] = 1 }
                        END { n = split(wanted, all, " "); for (i = 1; i <= n; ++i) if (!(all[i] in have)) print all[i] }'
}

# Every package known to apt? If not, its lists are empty or old.
apt_knows() {
  local package
  for package in "$@"; do
    apt-cache show --no-all-versions "$package" >/dev/null 2>&1 || return 1
  done
}

# install_missing PACKAGE…: installs those that are not there; silent and quick when all are.
install_missing() {
  if ! command -v dpkg-query >/dev/null || ! command -v apt-get >/dev/null; then
    say "This is not a Debian system. These packages of Debian 12 are needed under whatever name they have here:"
    say "  $*"
    return 0
  fi
  local missing
  mapfile -t missing < <(missing_packages "$@")
  [ "${#missing[@]}" -eq 0 ] && return 0
  say "Installing: ${missing[*]}"
  local install=(apt-get install -y -q --no-install-recommends "${missing[@]}")
  if ! apt_knows "${missing[@]}"; then
    as_root apt-get update -q >&2 || { say "apt-get update failed: is there a network?"; return 1; }
  fi
  as_root "${install[@]}" >&2 && return 0
  say "The package lists may be old: fetching them, then trying once more."
  as_root apt-get update -q >&2 && as_root "${install[@]}" >&2 && return 0
  say "Could not install: ${missing[*]}"
  return 1
}

# configure PRESET FOLDER [CMAKE ARGUMENT…]: what cmake says stands in FOLDER/configure.log, shown only when it fails. A build
# folder that was made elsewhere (the tree was moved or copied) is begun afresh.
configure() {
  local preset=$1 folder=$2 fresh=()
  shift 2
  mkdir -p "$folder"
  if [ -f "$folder/CMakeCache.txt" ] && ! grep -qxF "CMAKE_HOME_DIRECTORY:INTERNAL=$PWD" "$folder/CMakeCache.txt"; then
    fresh=(--fresh)
  fi
  if ! cmake "${fresh[@]}" --preset "$preset" -B "$folder" "$@" >"$folder/configure.log" 2>&1; then
    cat "$folder/configure.log" >&2
    say "Configuring preset '$preset' failed; the reason stands above and in $folder/configure.log"
    return 1
  fi
}
