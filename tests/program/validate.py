# Validates documents against a JSON Schema with jsonschema: validate.py SCHEMA FILE... where a file
# is JSON or TOML. Says what does not fit; exit 1 when anything doesn't.
import datetime
import json
import sys
import tomllib

import jsonschema


def plain(value):
    if isinstance(value, dict):
        return {key: plain(each) for key, each in value.items()}
    if isinstance(value, list):
        return [plain(each) for each in value]
    return value.isoformat() if isinstance(value, datetime.date) else value


with open(sys.argv[1], encoding="utf-8") as file:
    schema = json.load(file)
kind = jsonschema.validators.validator_for(schema, default=None)
kind.check_schema(schema)
status = 0
for name in sys.argv[2:]:
    with open(name, "rb") as file:
        document = plain(tomllib.load(file)) if name.endswith(".toml") else json.load(file)
    for error in kind(schema).iter_errors(document):
        status = 1
        print(f"{name}: {'/'.join(map(str, error.absolute_path))}: {error.message[:200]}")
sys.exit(status)
