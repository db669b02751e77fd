# Evensum. `make demo` lives a school day in the browser; `make test` proves it.
.PHONY: setup test-setup demo test lint coverage lock bench agreement soak migration screenshots
.DEFAULT_GOAL := demo

PY := .venv/bin/python
APT := $(if $(shell command -v sudo),sudo,) apt-get
export PIP_DISABLE_PIP_VERSION_CHECK := 1
export PIP_ROOT_USER_ACTION := ignore
export PIP_NO_INPUT := 1

setup: .venv/.ready

# Quick the second time: the mark is older than the lock file only if something changed.
.venv/.ready: requirements.lock pyproject.toml
	@echo "Setting up Evensum in .venv (about a minute the first time) ..."
	@command -v python3.11 >/dev/null || { echo "Evensum needs Python 3.11. On Debian: apt-get install python3.11 python3.11-venv"; exit 2; }
	@test -x $(PY) || python3.11 -m venv .venv 2>/dev/null || { \
	  echo "Python's venv module is missing; installing the Debian package python3.11-venv ..."; \
	  rm -rf .venv; $(APT) -qq update && $(APT) -qq install -y python3.11-venv >/dev/null && python3.11 -m venv .venv; }
	@.venv/bin/pip install -qq --no-deps -r requirements.lock
	@.venv/bin/pip install -qq --no-deps --no-build-isolation -e .
	@touch .venv/.ready

# Tests need a browser and a PostgreSQL of their own; both are Debian packages, installed only when missing.
test-setup: setup
	@need=""; \
	command -v chromium >/dev/null || command -v google-chrome >/dev/null || need="$$need chromium"; \
	command -v initdb >/dev/null || ls /usr/lib/postgresql/*/bin/initdb >/dev/null 2>&1 || need="$$need postgresql"; \
	if [ -n "$$need" ]; then \
	  echo "The tests need these Debian packages, installing them:$$need"; \
	  $(APT) -qq update && DEBIAN_FRONTEND=noninteractive $(APT) -qq install -y --no-install-recommends $$need >/dev/null \
	  || { echo "That did not work. Install them by hand:$$need"; exit 2; }; \
	fi

demo: setup
	@.venv/bin/evensum demo

lint: setup
	@.venv/bin/ruff check .
	@.venv/bin/ruff format --check .
	@.venv/bin/mypy
	@.venv/bin/lint-imports

# Coverage is a command of its own: to count every line would more than double the time of the tests.
test: test-setup lint
	@.venv/bin/evensum check-content --draws 300 --pictures 5
	@.venv/bin/pytest -n 2 --dist worksteal

# Thousands of typed rows and every answer of the course worked out again: to count their lines takes minutes.
PROOFS := tests/answers/test_rows.py tests/course tests/outside

# Which lines of bot/ no test reaches, on SQLite alone; it shows what lacks a test and proves nothing by itself.
coverage: test-setup
	@.venv/bin/pytest -n 2 --sqlite-only --cov=bot --cov-report=term:skip-covered $(addprefix --ignore=,$(PROOFS))

# Ratios against named baselines in the same run; about ten minutes on two cores with nothing else running.
bench: setup
	@for part in chat evening checker pictures planner proof; do \
	  if [ -f tests/bench/$$part.py ]; then echo "== $$part"; $(PY) tests/bench/$$part.py || exit 1; fi; done

agreement: setup
	@$(PY) tests/bench/agreement.py

soak: setup
	@$(PY) tests/bench/checker_soak.py
	@$(PY) tests/bench/year.py --weeks 40

screenshots: test-setup
	@$(PY) tests/browser/screenshots.py

# A migration from what the models say and a database doesn't have yet: make migration name="more words"
migration: setup
	@rm -f /tmp/evensum-migration.sqlite; \
	export EVENSUM_DATABASE_URL=sqlite:////tmp/evensum-migration.sqlite; \
	.venv/bin/evensum migrate >/dev/null && \
	.venv/bin/alembic -c migrations/alembic.ini revision --autogenerate -m "$(name)" && .venv/bin/ruff format -q migrations

lock: setup
	@.venv/bin/uv pip compile --quiet --all-extras --no-emit-index-url --no-header --python-version 3.11 -o requirements.lock pyproject.toml
