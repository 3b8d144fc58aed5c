//! The record of a piece: everything a later hand must know, in a form that outlives this program.
//!
//! The form is described in `RECORD.md`, letter by letter, so that it can be read without it.

use std::fmt::Write as _;

use ed25519_dalek::{Signature, Signer as _, SigningKey, VerifyingKey};
use serde_json::Value;
use thiserror::Error;

mod canonical;
mod of_piece;
mod parts;

pub use of_piece::{RecordHead, record_of};

/// The version of the record's form that this program writes.
pub const RECORD_VERSION: u32 = 1;

/// What is signed before the record itself, so that a signature fits nothing else.
const SIGNED_AS: &[u8] = b"rabbet record 1\n";
/// Bytes of a public key.
const KEY: usize = 32;
/// Bytes of a signature.
const SIGNATURE: usize = 64;
/// The longest record that is unpacked, in bytes: twice the longest job document.
const LONGEST: usize = 2 << 20;
/// How hard the packing tries: the hardest there is.
const PACKING: u8 = 10;

/// The key a shop signs its records with.
///
/// Shape:  Ed25519 (RFC 8032), made from 32 secret bytes that the caller draws; signing draws none.
pub struct RecordKey(SigningKey);

impl RecordKey {
    /// The key of these secret bytes.
    pub fn of(secret: [u8; KEY]) -> Self {
        Self(SigningKey::from_bytes(&secret))
    }

    /// Its public half, as it is printed: 64 hexadecimal digits.
    pub fn public(&self) -> String {
        hex(self.0.verifying_key().as_bytes())
    }
}

/// A record with its signature.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SealedRecord {
    public: [u8; KEY],
    signature: [u8; SIGNATURE],
    /// The canonical JSON.
    json: Vec<u8>,
    /// The same, packed; as it was read where it was read.
    packed: Vec<u8>,
}

/// Why a record can't be read.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum RecordFault {
    /// There is no part of a record in the text.
    #[error("There is no record in it: give the text of each code, which begins with RABBET1.")]
    None,
    /// A part was written by a newer program.
    #[error("Its form is {0}, this program reads RABBET1: update the program to read it.")]
    Newer(String),
    /// A part does not have the form of one.
    #[error("Part {part} can't be read: {why}. Scan that code again.")]
    Part {
        /// Which line of the text, from 1.
        part: usize,
        /// What is wrong.
        why: &'static str,
    },
    /// Parts of two records.
    #[error("These are parts of two records, {0} and {1}: give the codes of one label only.")]
    Mixed(String, String),
    /// Not all parts are there.
    #[error("Part {missing} of {count} is missing: scan that code too.")]
    Missing {
        /// The first that is missing, from 1.
        missing: usize,
        /// How many there are.
        count: usize,
    },
    /// The packed bytes can't be unpacked.
    #[error("The codes were read but what they hold can't be unpacked: scan them again.")]
    Packed,
    /// It unpacks to more than any record is.
    #[error("It unpacks to more than {LONGEST} bytes, which no record does.")]
    TooLong,
    /// It is no JSON record.
    #[error("What the codes hold is no record of a piece: {0}.")]
    NoRecord(String),
}

impl SealedRecord {
    /// Signs a record.
    ///
    /// Shape:  `record` as [`record_of`] makes it; its numbers are whole.
    pub fn seal(record: &Value, key: &RecordKey) -> Self {
        let json = canonical::bytes(record);
        let signature = key.0.sign(&signed(&json)).to_bytes();
        let packed = miniz_oxide::deflate::compress_to_vec(&json, PACKING);
        Self {
            public: key.0.verifying_key().to_bytes(),
            signature,
            json,
            packed,
        }
    }

    /// Reads the text of codes, one a line, in any order.
    pub fn read(text: &str) -> Result<Self, RecordFault> {
        let bytes = parts::joined(text)?;
        let (public, rest) = bytes
            .split_first_chunk::<KEY>()
            .ok_or(RecordFault::Packed)?;
        let (signature, packed) = rest
            .split_first_chunk::<SIGNATURE>()
            .ok_or(RecordFault::Packed)?;
        let unpacked = miniz_oxide::inflate::decompress_to_vec_with_limit(packed, LONGEST);
        let json = unpacked.map_err(|fault| match fault.status {
            miniz_oxide::inflate::TINFLStatus::HasMoreOutput => RecordFault::TooLong,
            _ => RecordFault::Packed,
        })?;
        let value: Value = serde_json::from_slice(&json)
            .map_err(|_| RecordFault::NoRecord("it is not JSON".to_owned()))?;
        match value.get("rabbet_record").and_then(Value::as_u64) {
            Some(version) if version > u64::from(RECORD_VERSION) => {
                Err(RecordFault::Newer(format!("rabbet_record {version}")))
            }
            Some(1) => Ok(Self {
                public: *public,
                signature: *signature,
                json,
                packed: packed.to_vec(),
            }),
            _ => Err(RecordFault::NoRecord(
                "it does not say rabbet_record".to_owned(),
            )),
        }
    }

    /// Whether the signature is that of the key the record names, over exactly this record.
    ///
    /// Source: RFC 8032, with the strict checks of small-order keys; checked against an
    ///         independent reader in `suite/python/record.py`.
    pub fn holds(&self) -> bool {
        let Ok(key) = VerifyingKey::from_bytes(&self.public) else {
            return false;
        };
        let signature = Signature::from_bytes(&self.signature);
        key.verify_strict(&signed(&self.json), &signature).is_ok()
    }

    /// The public key it names, as 64 hexadecimal digits.
    pub fn public(&self) -> String {
        hex(&self.public)
    }

    /// What the record says.
    pub fn value(&self) -> Value {
        serde_json::from_slice(&self.json).expect("it was read or written as JSON")
    }

    /// Its canonical JSON, as it was signed.
    pub fn json(&self) -> String {
        String::from_utf8_lossy(&self.json).into_owned()
    }

    /// The text of every code, part 1 first.
    pub fn texts(&self) -> Vec<String> {
        let bytes = [&self.public[..], &self.signature, &self.packed].concat();
        parts::split(&bytes, &self.name())
    }

    /// What tells its parts from those of another record: eight hexadecimal digits of its signature.
    pub fn name(&self) -> String {
        hex(&self.signature[..4]).to_uppercase() // geometry: four bytes are eight digits
    }
}

/// What is signed.
fn signed(json: &[u8]) -> Vec<u8> {
    [SIGNED_AS, json].concat()
}

fn hex(bytes: &[u8]) -> String {
    bytes.iter().fold(String::new(), |mut text, byte| {
        write!(text, "{byte:02x}").expect("writing to a string");
        text
    })
}

#[cfg(test)]
mod tests;
