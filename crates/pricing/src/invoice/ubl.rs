//! Writing an invoice as UBL 2.1.
//!
//! Element names and their order are those of the OASIS Universal Business Language 2.1 invoice schema (from
//! memory); the mapping of terms to elements is that of CEN/TS 16931-3-2 (from memory).

use std::fmt::Write;

use measure::Money;
use working::Decimal;

use super::{Adjustment, Breakdown, Invoice, InvoiceLine, Party, TaxedAs};
use crate::rules::TaxCategory;

/// A document being written, indented by depth.
struct Xml {
    text: String,
    depth: usize,
}

pub(super) fn written(invoice: &Invoice) -> String {
    let mut xml = Xml {
        text: "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n".to_owned(),
        depth: 0,
    };
    let spaces = concat!(
        "xmlns=\"urn:oasis:names:specification:ubl:schema:xsd:Invoice-2\" ",
        "xmlns:cac=\"urn:oasis:names:specification:ubl:schema:xsd:CommonAggregateComponents-2\" ",
        "xmlns:cbc=\"urn:oasis:names:specification:ubl:schema:xsd:CommonBasicComponents-2\"",
    );
    xml.with("Invoice", spaces, |xml| {
        head(xml, invoice);
        let heading = &invoice.heading;
        for (role, party) in [
            ("cac:AccountingSupplierParty", &heading.seller),
            ("cac:AccountingCustomerParty", &heading.buyer),
        ] {
            xml.inside(role, |xml| write_party(xml, party));
        }
        for adjustment in &invoice.adjustments {
            write_adjustment(xml, adjustment);
        }
        tax_total(xml, invoice);
        monetary_total(xml, invoice);
        for (at, line) in invoice.lines.iter().enumerate() {
            write_line(xml, at + 1, line);
        }
    });
    xml.text
}

impl Xml {
    fn with(&mut self, name: &str, attributes: &str, inside: impl FnOnce(&mut Self)) {
        let indent = "  ".repeat(self.depth);
        let space = if attributes.is_empty() { "" } else { " " };
        let _ = writeln!(self.text, "{indent}<{name}{space}{attributes}>");
        self.depth += 1;
        inside(self);
        self.depth -= 1;
        let _ = writeln!(self.text, "{indent}</{name}>");
    }

    fn inside(&mut self, name: &str, inside: impl FnOnce(&mut Self)) {
        self.with(name, "", inside);
    }

    fn text(&mut self, name: &str, text: &str) {
        self.marked(name, "", text);
    }

    fn marked(&mut self, name: &str, attributes: &str, text: &str) {
        let indent = "  ".repeat(self.depth);
        let space = if attributes.is_empty() { "" } else { " " };
        let text = escaped(text);
        let _ = writeln!(
            self.text,
            "{indent}<{name}{space}{attributes}>{text}</{name}>"
        );
    }

    fn some(&mut self, name: &str, text: Option<&str>) {
        if let Some(text) = text.filter(|text| !text.trim().is_empty()) {
            self.text(name, text);
        }
    }

    fn money(&mut self, name: &str, money: Money) {
        let currency = format!("currencyID=\"{}\"", money.currency.code());
        self.marked(name, &currency, &money.number());
    }
}

/// Text as it stands in an element; characters that XML 1.0 forbids become spaces.
fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\t' | '\n' | '\r' => out.push(' '),
            c if c.is_control() || matches!(c, '\u{fffe}' | '\u{ffff}') => out.push(' '),
            c => out.push(c),
        }
    }
    out
}

fn head(xml: &mut Xml, invoice: &Invoice) {
    let heading = &invoice.heading;
    xml.text("cbc:CustomizationID", "urn:cen.eu:en16931:2017");
    xml.text("cbc:ID", &heading.number);
    xml.text("cbc:IssueDate", &heading.given.to_string());
    xml.text("cbc:DueDate", &heading.due.to_string());
    xml.text("cbc:InvoiceTypeCode", COMMERCIAL);
    xml.some("cbc:Note", heading.note.as_deref());
    xml.text("cbc:DocumentCurrencyCode", invoice.sums.due.currency.code());
    xml.some("cbc:BuyerReference", heading.buyer_reference.as_deref());
}

/// A commercial invoice, by UNTDID 1001.
const COMMERCIAL: &str = "380";

fn write_party(xml: &mut Xml, party: &Party) {
    xml.inside("cac:Party", |xml| {
        xml.inside("cac:PostalAddress", |xml| {
            xml.some("cbc:StreetName", party.street.as_deref());
            xml.some("cbc:CityName", party.town.as_deref());
            xml.some("cbc:PostalZone", party.post_code.as_deref());
            xml.inside("cac:Country", |xml| {
                xml.text("cbc:IdentificationCode", &party.country);
            });
        });
        if let Some(number) = &party.vat_number {
            xml.inside("cac:PartyTaxScheme", |xml| {
                xml.text("cbc:CompanyID", number);
                scheme(xml);
            });
        }
        xml.inside("cac:PartyLegalEntity", |xml| {
            xml.text("cbc:RegistrationName", &party.name);
            xml.some("cbc:CompanyID", party.register_number.as_deref());
        });
    });
}

fn scheme(xml: &mut Xml) {
    xml.inside("cac:TaxScheme", |xml| xml.text("cbc:ID", "VAT"));
}

/// A category of tax; outside the scope of tax there is no rate (BR-O-5).
fn category(xml: &mut Xml, name: &str, taxed: &TaxedAs, with_reason: bool) {
    xml.inside(name, |xml| {
        xml.text("cbc:ID", taxed.category.code());
        if taxed.category != TaxCategory::O {
            xml.text("cbc:Percent", &percent(taxed.share));
        }
        if with_reason {
            xml.some("cbc:TaxExemptionReason", taxed.reason.as_deref());
        }
        scheme(xml);
    });
}

/// The rate as a number of hundredths: `20`, `8.25`.
fn percent(share: Decimal) -> String {
    share.percent().trim_end_matches(" %").to_owned()
}

fn write_adjustment(xml: &mut Xml, adjustment: &Adjustment) {
    xml.inside("cac:AllowanceCharge", |xml| {
        let charge = if adjustment.is_charge {
            "true"
        } else {
            "false"
        };
        xml.text("cbc:ChargeIndicator", charge);
        xml.text("cbc:AllowanceChargeReason", &adjustment.reason);
        xml.money("cbc:Amount", adjustment.amount);
        category(xml, "cac:TaxCategory", &adjustment.taxed, false);
    });
}

fn tax_total(xml: &mut Xml, invoice: &Invoice) {
    xml.inside("cac:TaxTotal", |xml| {
        xml.money("cbc:TaxAmount", invoice.sums.tax);
        for Breakdown {
            taxed,
            taxable,
            tax,
        } in &invoice.breakdown
        {
            xml.inside("cac:TaxSubtotal", |xml| {
                xml.money("cbc:TaxableAmount", *taxable);
                xml.money("cbc:TaxAmount", *tax);
                category(xml, "cac:TaxCategory", taxed, true);
            });
        }
    });
}

fn monetary_total(xml: &mut Xml, invoice: &Invoice) {
    let sums = invoice.sums;
    xml.inside("cac:LegalMonetaryTotal", |xml| {
        xml.money("cbc:LineExtensionAmount", sums.lines);
        xml.money("cbc:TaxExclusiveAmount", sums.without_tax);
        xml.money("cbc:TaxInclusiveAmount", sums.with_tax);
        xml.money("cbc:AllowanceTotalAmount", sums.allowances);
        xml.money("cbc:ChargeTotalAmount", sums.charges);
        xml.money("cbc:PrepaidAmount", sums.paid);
        if sums.rounding.minor != 0 {
            xml.money("cbc:PayableRoundingAmount", sums.rounding);
        }
        xml.money("cbc:PayableAmount", sums.due);
    });
}

fn write_line(xml: &mut Xml, number: usize, line: &InvoiceLine) {
    xml.inside("cac:InvoiceLine", |xml| {
        xml.text("cbc:ID", &number.to_string());
        let unit = format!("unitCode=\"{}\"", line.unit_code);
        xml.marked("cbc:InvoicedQuantity", &unit, &line.quantity);
        xml.money("cbc:LineExtensionAmount", line.net);
        xml.inside("cac:Item", |xml| {
            xml.some("cbc:Description", Some(&line.description));
            xml.text("cbc:Name", &line.name);
            category(xml, "cac:ClassifiedTaxCategory", &line.taxed, false);
        });
        xml.inside("cac:Price", |xml| {
            xml.money("cbc:PriceAmount", line.price);
        });
    });
}
