# Evensum. `make demo` lives a school day in the browser; `make test` proves it.
.PHONY: setup test-setup demo test lint lock bench agreement soak

PY := .venv/bin/python

setup: .venv/.ready

.venv/.ready: requirements.lock pyproject.toml
	@echo "Setting up Evensum in .venv (about a minute the first time) ..."
	@command -v python3.11 >/dev/null || { echo "Evensum needs Python 3.11. On Debian: apt-get install python3.11 python3.11-venv"; exit 2; }
	@test -x $(PY) || python3.11 -m venv .venv 2>/dev/null || { \
	  echo "Python's venv module is missing; installing the Debian package python3.11-venv ..."; \
	  rm -rf .venv; apt-get -qq update && apt-get -qq install -y python3.11-venv >/dev/null && python3.11 -m venv .venv; }
	@.venv/bin/pip install --quiet --disable-pip-version-check --no-deps -r requirements.lock
	@.venv/bin/pip install --quiet --disable-pip-version-check --no-deps --no-build-isolation -e .
	@touch .venv/.ready

lock:
	.venv/bin/uv pip compile --quiet --all-extras --no-emit-index-url --no-header --python-version 3.11 -o requirements.lock pyproject.toml
