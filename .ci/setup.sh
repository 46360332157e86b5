# shellcheck shell=sh
# Sourced by tests/run, demo-data/run, tests/bench/run and .ci/run. Needs `root`, the top of the repository.
# POSIX sh. Says what it does before it changes the machine.

# packages_of GROUP…: the names in those groups of .ci/packages.
packages_of() {
    awk -v wanted=" $* " '
        /^#/ || NF == 0 { next }
        /^\[/           { group = substr($1, 2, length($1) - 2); next }
        index(wanted, " " group " ") { print $1 }' "${root:?}/.ci/packages"
}

# missing_of GROUP…: those of them that are not installed.
missing_of() {
    packages_of "$@" | while read -r package; do
        status=$(dpkg-query -W -f '${db:Status-Status}' "$package" 2>/dev/null) || status=none
        [ "$status" = installed ] || echo "$package"
    done
}

# install_missing GROUP…: installs what is missing and touches nothing when all is there.
install_missing() {
    if ! command -v dpkg-query >/dev/null; then
        echo "Not a Debian machine: make sure by hand that what .ci/packages lists under $* is there." >&2
        return 0
    fi
    missing=$(missing_of "$@" | tr '\n' ' ')
    [ -n "$missing" ] || return 0
    as_root=
    if [ "$(id -u)" -ne 0 ]; then
        as_root=sudo
        if ! command -v sudo >/dev/null; then
            echo "Missing: $missing" >&2
            echo "Neither root nor sudo here. As root: apt-get install --no-install-recommends $missing" >&2
            return 1
        fi
    fi
    echo "Installing from Debian: $missing"
    $as_root apt-get -qq update || echo "apt-get update failed; going on with the lists this machine has" >&2
    # shellcheck disable=SC2086  # a list of names, split on purpose
    $as_root env DEBIAN_FRONTEND=noninteractive apt-get -qq install -y --no-install-recommends $missing </dev/null >/dev/null
}

# configure_in FOLDER CMAKE-OPTION…: ccache is used when it is there. CI turns warnings into errors.
configure_in() {
    folder=$1
    shift
    if command -v ccache >/dev/null; then
        set -- -DCMAKE_C_COMPILER_LAUNCHER=ccache -DCMAKE_CXX_COMPILER_LAUNCHER=ccache "$@"
    fi
    if [ "${CI:-}" = true ]; then
        set -- -DCMAKE_COMPILE_WARNING_AS_ERROR=ON "$@"
    fi
    cmake -S "${root:?}" -B "$folder" -G Ninja "$@"
}

# build_in FOLDER CMAKE-OPTION…: configures and builds; JOBS says how many compilers at once (default: one a processor).
build_in() {
    configure_in "$@" && cmake --build "$1" --parallel "${JOBS:-$(nproc)}"
}
