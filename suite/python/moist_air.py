"""Moist air by PsychroLib, to hold against our own.

Reads a JSON list of [temperature in degrees Celsius, relative humidity in per cent, pressure in Pa] from
standard input and writes a JSON list of what PsychroLib makes of each: pressure of saturation and of
vapour in Pa, dew point and wet bulb in degrees Celsius, humidity ratio in kg per kg.
"""

import json
import sys

import psychrolib

psychrolib.SetUnitSystem(psychrolib.SI)


def answer(celsius, per_cent, pressure):
    share = per_cent / 100
    return [
        psychrolib.GetSatVapPres(celsius),
        psychrolib.GetVapPresFromRelHum(celsius, share),
        psychrolib.GetTDewPointFromRelHum(celsius, share),
        psychrolib.GetTWetBulbFromRelHum(celsius, share, pressure),
        psychrolib.GetHumRatioFromRelHum(celsius, share, pressure),
    ]


json.dump([answer(*question) for question in json.load(sys.stdin)], sys.stdout)
