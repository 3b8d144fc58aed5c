//! Minor units, compared with the standard's own table.
//!
//! Source: ISO 4217 list one (current currencies and funds), published 2026-01-01 by the maintenance
//! agency, as packed in the `iso4217` package for Python, 1.16.20260101.

use measure::Currency;

/// The number of decimals, and every code of the list that has them.
const PLACES: &[(u32, &str)] = &[
    (
        0,
        "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF",
    ),
    (
        2,
        "AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BMD BND BOB BOV BRL BSD BTN BWP BYN BZD \
        CAD CDF CHE CHF CHW CNY COP COU CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP \
        GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK \
        LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MXV MYR MZN NAD NGN NIO \
        NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS \
        SRD SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD USN UYU UZS VED VES WST \
        XAD XCD XCG YER ZAR ZMW ZWG",
    ),
    (3, "BHD IQD JOD KWD LYD OMR TND"),
    (4, "CLF UYW"),
];

/// Codes of the list without a minor unit.
const WITHOUT: &str = concat!(
    "XAG XAU XBA XBB XBC XBD XDR XPD XPT XSU XTS XUA ",
    "XX",
    "X"
);

#[test]
fn every_listed_currency_has_its_decimals() {
    let mut listed = 0;
    for (places, codes) in PLACES {
        for code in codes.split_whitespace() {
            let held = Currency::from_code(code).map(Currency::places);
            assert_eq!(held, Some(*places), "{code}");
            listed += 1;
        }
    }
    assert_eq!(listed, 165);
}

#[test]
fn what_has_no_minor_unit_is_no_currency() {
    for code in WITHOUT.split_whitespace() {
        assert_eq!(Currency::from_code(code), None, "{code}");
    }
}
