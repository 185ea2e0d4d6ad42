# `make run` opens the window and `make test` runs all checks; both set up what they need first.
.DEFAULT_GOAL := help
.NOTPARALLEL:
PY := .venv/bin/python
export PYTHON

.PHONY: help setup setup-checks run test lint format types wall pytest bench samples screenshots \
	pins clean

help: ## List what can be done
	@echo "Swatchwright. What you can type:"
	@sed -n 's/^\([a-z-]*\):.*## \(.*\)/  make \1	\2/p' $(MAKEFILE_LIST) | expand -t 24

setup: ## Get this machine and folder ready for the program
	@tools/setup.sh run

setup-checks: ## Get this machine and folder ready for the program and its checks
	@tools/setup.sh checks

run: setup ## Open the window
	@tools/run.sh

test: lint types wall pytest ## Run all checks, as the build does

lint: setup-checks ## Check the style of the code
	$(PY) -m ruff check .
	$(PY) -m ruff format --check .

format: setup-checks ## Lay out the code and mend what can be mended by rule
	$(PY) -m ruff format .
	$(PY) -m ruff check --fix .

types: setup-checks ## Check the types
	$(PY) -m mypy

wall: setup-checks ## Check that imports point down only and that Qt stays in the desktop
	.venv/bin/lint-imports

pytest: setup-checks ## Run the tests, those of the window without a screen
	QT_QPA_PLATFORM=offscreen $(PY) -m pytest -n auto --dist loadfile --no-loadscope-reorder

bench: setup-checks ## Measure speed against the baseline in the same run
	QT_QPA_PLATFORM=offscreen $(PY) -m pytest tests/benchmarks --benchmark-enable --benchmark-only

samples: setup ## Paint the sample photos anew
	$(PY) tools/render_samples.py

screenshots: setup ## Take the pictures of the window anew
	QT_QPA_PLATFORM=offscreen $(PY) tools/take_screenshots.py
	QT_QPA_PLATFORM=offscreen $(PY) tools/take_screenshots.py --language de

pins: ## Pin the newest versions that suit every Python we run on (needs uv)
	tools/pin.sh

clean: ## Remove what was set up and what the checks left behind
	rm -rf .venv .pytest_cache .mypy_cache .ruff_cache .import_linter_cache .hypothesis .benchmarks
	find . -name __pycache__ -type d -prune -exec rm -rf {} +
