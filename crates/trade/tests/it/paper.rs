//! Sheet sizes; the whole list stands in `suite/ref/reference`.

use measure::{Length, Size};
use trade::SheetSeries;

#[test]
fn each_sheet_is_half_of_the_last() {
    let sheet = |number| SheetSeries::A.sheet(number).expect("there is one");
    assert_eq!(sheet(4), Size::new(Length::mm(210), Length::mm(297)));
    assert_eq!(sheet(10), Size::new(Length::mm(26), Length::mm(37)));
    assert_eq!(SheetSeries::A.sheet(11), None);
    assert_eq!(SheetSeries::A.sheet(u32::MAX), None);
    assert_eq!(SheetSeries::named("D"), None);
}
