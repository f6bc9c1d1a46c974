# Sourced by try and check: makes .venv from a lock, and leaves it alone when the lock has not changed.
# usage: prepare LOCK   (run from the top of the tree)

python_of_choice() {
  local name
  for name in python3.11 python3.12 python3.13 python3.14 python3; do
    if command -v "$name" >/dev/null 2>&1 &&
      "$name" -c 'import sys, venv, ensurepip; sys.exit(sys.version_info < (3, 11))' >/dev/null 2>&1; then
      echo "$name"
      return
    fi
  done
  echo "Python 3.11 or newer with its venv module is needed, and none was found. Install it, then run this again." >&2
  return 1
}

prepare() {
  local lock=$1 python stamp
  stamp="$(cat "$lock" pyproject.toml | cksum | tr -d ' ')-$(pwd | cksum | tr -d ' ')"
  if [ -x .venv/bin/python ] && grep -qsF "$stamp" .venv/rungbook-stamps; then
    compiled
    return
  fi
  python=$(python_of_choice)
  [ -x .venv/bin/python ] || "$python" -m venv .venv
  echo "Setting up .venv (a minute or two, the first time only) ..." >&2
  .venv/bin/python -m pip install --quiet --quiet --disable-pip-version-check --require-hashes -r "$lock"
  .venv/bin/python -m pip install --quiet --quiet --disable-pip-version-check --no-deps --no-build-isolation -e .
  echo "$stamp" >>.venv/rungbook-stamps
  compiled
}

# A service that may not write into the tree could not keep what Python compiles, and would do it anew at each start.
compiled() {
  .venv/bin/python -m compileall -q bot core || true
}
