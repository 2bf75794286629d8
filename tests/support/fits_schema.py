"""fits_schema.py SCHEMA.json LINES [strict]: each line is {"name": …, "value": …}; prints the names of those that do not
fit, with the first reason. `strict`: members that the schema does not name are refused too. An independent reading of
the schema: Debian's python3-jsonschema."""
import json
import sys

from jsonschema import Draft202012Validator


def closed(schema):
    if isinstance(schema, dict):
        if "properties" in schema:
            schema = dict(schema, additionalProperties=False)
        return {key: closed(value) for key, value in schema.items()}
    return [closed(one) for one in schema] if isinstance(schema, list) else schema


with open(sys.argv[1], encoding="utf-8") as file:
    schema = json.load(file)
Draft202012Validator.check_schema(schema)
validator = Draft202012Validator(closed(schema) if "strict" in sys.argv[3:] else schema)
seen = 0
with open(sys.argv[2], encoding="utf-8") as file:
    for line in file:
        seen += 1
        one = json.loads(line)
        fault = next(validator.iter_errors(one["value"]), None)
        if fault is not None:
            print(one["name"], "/".join(str(part) for part in fault.absolute_path), fault.message[:200].replace("\n", " "), sep="\t")
print("seen", seen, sep="\t")
