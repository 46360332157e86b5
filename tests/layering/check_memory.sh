#!/bin/sh
# sh check_memory.sh LIBRARY…: fails when a function of ours in one of these libraries keeps something between calls. Reads what the
# compiler made of it: a local static that can be written, or is made at its first use, stands there as `folder::function(…)::name`.
set -eu
theirs='std|boost|fmt|toml|nlohmann'
for library in "$@"; do
    symbols=$(nm -C -- "$library")
    kept=$(echo "$symbols" | grep -E '^[0-9a-f]+ [bBdDuV] (guard variable for )?[a-z]+::.*\)( const)?(\[abi:[a-z0-9]+\])?::[A-Za-z_0-9]+$' |
        grep -vE "anonymous namespace\)::[A-Za-z_0-9]+\$| (guard variable for )?($theirs)::" || true)
    [ -z "$kept" ] || { echo "kept between calls in $library, which is pure:"; echo "$kept"; exit 1; }
done
