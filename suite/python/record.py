"""Reads the record of a piece from the text of its codes, as RECORD.md describes it, and checks its signature.

    python3 record.py CODES.txt        prints whether the signature holds, the public key and the record

It knows nothing of the program that wrote them: base45 (RFC 9285), raw deflate (RFC 1951) and Ed25519 (RFC 8032)
are all it stands on. The curve is written out below from the standard's own reference; it is slow and only verifies.
"""
import hashlib
import json
import sys
import zlib

# --- the record ------------------------------------------------------------------------------------------------------

LETTERS = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:"


def base45(text):
    out = b""
    for at in range(0, len(text), 3):
        group = [LETTERS.index(letter) for letter in text[at : at + 3]]
        value = sum(digit * 45**place for place, digit in enumerate(group))
        out += value.to_bytes(2 if len(group) == 3 else 1, "big")
    return out


def joined(lines):
    parts = {}
    for line in lines:
        head, letters = line.split(":", 1)
        form, part, count, name = head.split("/")
        assert form == "RABBET1", form
        parts[int(part)] = letters
    assert sorted(parts) == list(range(1, int(count) + 1)), sorted(parts)
    return base45("".join(parts[part] for part in sorted(parts)))


def record(lines):
    data = joined(lines)
    key, signature, packed = data[:32], data[32:96], data[96:]
    text = zlib.decompress(packed, wbits=-15)
    return verified(key, b"rabbet record 1\n" + text, signature), key.hex(), json.loads(text)


# --- Ed25519, RFC 8032, 5.1 and 6 ------------------------------------------------------------------------------------

P = 2**255 - 19
ORDER = 2**252 + 27742317777372353535851937790883648493
D = -121665 * pow(121666, P - 2, P) % P
ROOT = pow(2, (P - 1) // 4, P)


def added(one, other):
    a = (one[1] - one[0]) * (other[1] - other[0]) % P
    b = (one[1] + one[0]) * (other[1] + other[0]) % P
    c = 2 * one[3] * other[3] * D % P
    d = 2 * one[2] * other[2] % P
    e, f, g, h = b - a, d - c, d + c, b + a
    return e * f % P, g * h % P, f * g % P, e * h % P


def times(scalar, point):
    result = (0, 1, 1, 0)
    while scalar:
        if scalar & 1:
            result = added(result, point)
        point = added(point, point)
        scalar >>= 1
    return result


def point(data):
    y = int.from_bytes(data, "little")
    sign, y = y >> 255, y & (2**255 - 1)
    square = (y * y - 1) * pow(D * y * y + 1, P - 2, P) % P
    x = pow(square, (P + 3) // 8, P)
    if (x * x - square) % P:
        x = x * ROOT % P
    if y >= P or (x * x - square) % P or (x == 0 and sign):
        return None
    if x & 1 != sign:
        x = P - x
    return x, y, 1, x * y % P


def verified(key, message, signature):
    a, r = point(key), point(signature[:32])
    s = int.from_bytes(signature[32:], "little")
    if a is None or r is None or s >= ORDER:
        return False
    h = int.from_bytes(hashlib.sha512(signature[:32] + key + message).digest(), "little") % ORDER
    base = point((4 * pow(5, P - 2, P) % P).to_bytes(32, "little"))
    left, right = times(s, base), added(r, times(h, a))
    return (left[0] * right[2] - right[0] * left[2]) % P == 0 and (left[1] * right[2] - right[1] * left[2]) % P == 0


if __name__ == "__main__":
    if len(sys.argv) > 1:
        with open(sys.argv[1], encoding="ascii") as file:
            holds, key, said = record([line.rstrip("\r\n") for line in file if line.strip()])
        print("signature holds" if holds else "SIGNATURE DOES NOT HOLD", "by", key)
        print(json.dumps(said, ensure_ascii=False, indent=2))
    else:
        # Asked by the suite: a list of records, each a list of lines.
        answers = [record(lines) for lines in json.load(sys.stdin)]
        json.dump([{"holds": holds, "key": key, "record": said} for holds, key, said in answers], sys.stdout)
