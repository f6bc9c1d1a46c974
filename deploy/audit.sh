# Sourced by check: asks the public service of known weaknesses about every pinned package.
# Something known fails the check; packages that could not be asked about are said plainly, and the check goes on.

audit() {
  local lock=$1 said status=0
  said=$(mktemp)
  timeout 120 .venv/bin/pip-audit --requirement "$lock" --require-hashes --disable-pip --progress-spinner off \
    --timeout 10 --format json --output "$said" >/dev/null 2>&1 || true
  .venv/bin/python - "$lock" "$said" <<'PY' || status=$?
import json, pathlib, sys

lock, said = sys.argv[1], pathlib.Path(sys.argv[2]).read_text(encoding="utf-8")
try:
    packages = json.loads(said)["dependencies"]
except ValueError:  # it was stopped, or could reach nobody
    packages = []
asked = [one for one in packages if "skip_reason" not in one]
known = [(one, weakness) for one in asked for weakness in one["vulns"]]
for one, weakness in known:
    mended = ", ".join(weakness["fix_versions"]) or "no version yet"
    print(f"{one['name']} {one['version']}: {weakness['id']}, mended in {mended}", file=sys.stderr)
if not asked:
    print(f"The service of known weaknesses could not be asked: the audit of {lock} is LEFT OUT.", file=sys.stderr)
elif not known:
    print(f"Nothing is known against {len(asked)} packages of {lock}.")
if asked and len(asked) < len(packages):
    print(f"LEFT OUT: {len(packages) - len(asked)} packages could not be asked about.", file=sys.stderr)
sys.exit(1 if known else 0)
PY
  rm -f "$said"
  return $status
}
