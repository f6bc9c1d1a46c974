# Sourced by check: sees to a Chromium for the page's tests, or says that they are left out.

browser_for_tests() {
  local name
  for name in chromium chromium-browser google-chrome; do
    command -v "$name" >/dev/null 2>&1 && return
  done
  if command -v apt-get >/dev/null 2>&1 && [ "$(id -u)" = 0 ]; then
    echo "Setting up Chromium for the page's tests (once) ..." >&2
    { apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends chromium; } \
      >/dev/null 2>&1 && command -v chromium >/dev/null 2>&1 && return
  fi
  echo "No Chromium here and none could be installed: the page's tests in a browser are LEFT OUT." >&2
}
