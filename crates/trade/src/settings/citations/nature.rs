//! The sources on light, climate, boards, loads and colour.

use working::{Citation, Seen};

/// One source a line: code, title, publisher, year, how much of it was seen.
macro_rules! sources {
    ($($code:literal $title:literal, $publisher:literal, $year:literal, $seen:ident;)*) => {
        /// What light, climate and loads do, and who says so.
        pub(super) const NATURE: &[Citation] = &[$(Citation {
            code: $code,
            title: $title,
            publisher: $publisher,
            year: $year,
            seen: Seen::$seen,
        }),*];
    };
}

sources! {
    "L1" "Agent of Deterioration: Light, Ultraviolet and Infrared (S. Michalski)", "Canadian Conservation Institute", "web edition, undated", InPart;
    "L2" "Sensitivity of Coloured Materials to Light and the number of years to cause fading (two-page table after CCI)", "Canadian Conservation Institute / Michalski", "undated", InPart;
    "L3" "CIE 157:2004 Control of damage to museum objects by optical radiation", "Commission Internationale de l'Eclairage", "2004", FromMemory;
    "L4" "Lux Allowance Calculator, settings file build/lightallowance.json", "National Gallery, London (Scientific Department); public repository jpadfield/Lux-Allowance-Calculator", "2023 (commit 1b98710) and earlier (commit 2f84d8a)", Read;
    "L5" "Public R package for museum environment logs: functions light_dose and set_minmax", "open-source repository; name not shown by the look-up", "undated", Read;
    "L6" "Handbook of a museum light and UV meter, page 7 (units of measurement)", "instrument maker", "undated", Read;
    "L7" "Exhibition lighting standards (message cdl 2001/1474)", "Conservation DistList, via Conservation OnLine (FAIC)", "2001", Read;
    "L8" "Amount of Ultraviolet Light from Lamps", "Photocatalysis Industry Association of Japan", "2007", Read;
    "L9" "Technical document on display conditions for colour prints", "photographic-paper manufacturer", "c. 2003", Read;
    "L10" "'20 Year' light fade test results for 20 samples", "Aardenburg Imaging & Archives", "2008", Read;
    "L11" "Recommended light levels (conservation pages)", "Science Museum of Minnesota", "2020", Read;
    "L12" "Preservation 101, session 5 practical exercise, reporting ANSI/NISO Z39.79-2001", "Northeast Document Conservation Center", "2006", Read;
    "L13" "The Museum Environment, 2nd ed. (G. Thomson), as reported in K. Shaw, Display and Conservation", "Butterworths / Lighting Dimensions", "1986", SecondHand;
    "L16" "ISO 105-A02 Textiles - Tests for colour fastness - Grey scale for assessing change in colour", "ISO", "1993", FromMemory;
    "L17" "Test Your Photos: fade resistance (table of illuminances)", "computer magazine", "c. 2011", Read;
    "L19" "ANSI/IESNA RP-30-96 Museum and art gallery lighting", "Illuminating Engineering Society of North America", "1996", FromMemory;
    "L20" "EN 12464-1 Light and lighting of work places, indoor", "CEN", "2021", FromMemory;
    "H2" "Tree species average properties table (same figures as Wood Handbook Table 5-3b)", "synthmind.com", "undated", SecondHand;
    "H3" "Wood properties: Maple, Sugar (from the Wood Handbook)", "engdatabase.com", "undated", SecondHand;
    "H4" "Investigation of Historic Equilibrium Moisture Content Data, FPL-GTR-229 (Glass, Zelinka, Johnson)", "USDA Forest Products Laboratory", "2014", Read;
    "H5" "Equilibrium moisture content (encyclopedia article, mirrors)", "Wikipedia mirrors", "undated", Read;
    "H6" "Conservation Science: Heritage Materials, chapter 3 (paper), page 38", "Royal Society of Chemistry", "2006", Read;
    "H7" "Re: About paper grain (Book_Arts-L message)", "Conservation OnLine archive", "2000", Read;
    "H8" "Factors affecting the hygroexpansion of paper (M. Lindner), J. Materials Science 53", "Springer", "2018", InPart;
    "H9" "ISO 8226-1 Paper and board - Measurement of hygroexpansivity", "ISO", "1994", FromMemory;
    "H10" "Relative humidity: variation with temperature in a case containing wood (G. Thomson), Studies in Conservation 9(4) 153-169", "IIC", "1964", InPart;
    "H11" "The interaction of water vapour with paper in small spaces (T. Padfield, draft chapter)", "padfield.org / conservationphysics.org", "undated", Read;
    "H12" "The microclimate within a framed picture (Berg, Dahlstrom, Padfield, Rischel)", "National Museum of Denmark", "undated", Read;
    "H13" "Environmental standard proposal: relative humidity", "T. Padfield, conservationphysics.org", "undated", Read;
    "H14" "An evaluation of silica gel for humidity control in display cases (Yu, Klein, Reindl), WAAC Newsletter 23(2)", "Western Association for Art Conservation", "2001", InPart;
    "H15" "The Sistine Chapel: HVAC design (Bullock, Philip, Pennati), ASHRAE Journal", "ASHRAE", "1996, reprinted 2009", Read;
    "H16" "ASHRAE types of control (S. Michalski) / ASHRAE Handbook HVAC Applications, Museums chapter", "Canadian Conservation Institute / ASHRAE", "chapter 23 in the 2015 edition", FromMemory;
    "H17" "PsychroLib 2.5.0 (implements ASHRAE Handbook Fundamentals 2017, SI) and CoolProp 8.0.0 HumidAir", "open-source libraries, run for this table", "2023 / 2025", Read;
    "H18" "Painting on canvas with back protection under temperature cycling (Padfield et al.)", "conservationphysics.org", "2019", Read;
    "H19" "Bizot Green Protocol / AIC Environmental Guidelines", "Bizot Group / American Institute for Conservation", "2015 rev. 2023 / 2013", FromMemory;
    "H20" "Determining the acceptable ranges of RH and temperature in museums and galleries (M. Mecklenburg)", "Smithsonian Museum Conservation Institute", "2007", FromMemory;
    "H21" "The stabilization of RH in exhibition cases: hygrometric half-time (G. Thomson), Studies in Conservation 22", "IIC", "1977", FromMemory;
    "G2" "ASTM C1036 Standard Specification for Flat Glass", "ASTM International", "2021 (also 2016, 2006, 2001)", FromMemory;
    "G4" "Glass properties, part 1 (refers to EN 572-1)", "glass maker's handbook, one page", "undated", Read;
    "G5" "EN 572-2 Glass in building - Float glass", "CEN", "2012", FromMemory;
    "G7" "Expansion and contraction of acrylic (knowledge-base article); address left out because it carries a brand", "acrylic sheet maker", "undated", Read;
    "G8" "Extruded acrylic sheet specification, 'Expansion and contraction'; address left out because it names a brand", "plastics distributor", "undated", Read;
    "G9" "PMMA (cast), material page", "designerdata.nl", "undated", Read;
    "G13" "Fresnel equations (any optics text, e.g. Hecht, Optics)", "textbook", "-", Read;
    "G14" "Glass thickness converter (names 2 mm 'picture frame glass', 2.5 mm single, 3 mm double)", "superglobalcalculator.com", "undated", Read;
    "B1" "Final Report to Congress on the national policy on permanent papers, Appendix 3: comparison of permanent paper standards", "Library of Congress", "1995", Read;
    "B2" "Specification Number 200-221-6/19/02 (folder stock for storage of artifacts)", "Library of Congress Preservation Directorate", "2002", Read;
    "B4" "ISO 9706:2025 Paper for documents - Requirements for permanence (catalogue entry)", "ISO", "2025", InPart;
    "B5" "ISO 18902:2013 Albums, framing and storage materials (catalogue entry, preview)", "ISO", "2013", InPart;
    "B6" "ISO 18916:2007 Photographic activity test (catalogue entry)", "ISO", "2007", InPart;
    "B7" "ISO standards for housing photographs (worksheet)", "Conservation Center for Art & Historic Artifacts", "undated", Read;
    "B8" "Standards for Mountboard and other boards used in framing", "Fine Art Trade Guild", "2004", Read;
    "B12" "ISO 16245 Boxes, file covers and other enclosures made from cellulosic materials", "ISO", "2009", FromMemory;
    "B13" "Museum board composition note (after Preserv'Art)", "Centre de conservation du Quebec, via fosca.com", "2018", SecondHand;
    "M2" "Preservation Leaflet 7.4 How to do your own matting and hinging", "NEDCC", "undated", Read;
    "M3" "Matting and Hinging Works of Art on Paper: paper hinges; mounting and hinging", "Library of Congress research guide", "undated", Read;
    "M4" "Matting and Hinging Works of Art on Paper: basic storage mat", "Library of Congress research guide", "undated", Read;
    "M5" "Conserve O Gram 14/1 Making mounting corners for photographs and paper objects", "US National Park Service", "1993", Read;
    "M6" "Chapter 'Mounting artwork or documents' (book not identified)", "not identified", "undated", Read;
    "M7" "Ask the Experts: Art and T-Hinges (C. A. Paschke), The Artist's Magazine", "F+W", "Jan/Feb 2014", Read;
    "M8" "BPG Matting and Framing, AIC Wiki (chapter 40 of the Paper Conservation Catalog)", "American Institute for Conservation", "2024", InPart;
    "M9" "Matting and Hinging Flat Paper Objects (M. A. Smith)", "Library of Congress / SPNHC", "1992", Read;
    "E1" "Two reasons for design factors in rigging equipment (on ASME B30.9 and B30.26)", "Industrial Training International", "undated", SecondHand;
    "E2" "Sling safe working load flashcard (wire rope 5:1, alloy chain 4:1)", "govur university", "undated", SecondHand;
    "E3" "Dimensioning for steel wire rope slings", "rope supplier, Finland", "undated", Read;
    "E4" "Wood screws, allowable withdrawal load (2850 G^2 D) with worked example", "engineeringtoolbox.com", "undated", Read;
    "E5" "Engineering handbook, chapter 6, equations 6.37 and 6.38 (title not shown)", "issuhub 4884 page 189", "undated", Read;
    "E6" "Woodworking reference page quoting the Wood Handbook ultimate withdrawal equation 15700 G^2 D with worked example", "web page", "undated", SecondHand;
    "E9" "Euler-Bernoulli beam formulas; statics of a two-leg sling", "textbook (e.g. Roark)", "-", Read;
    "E10" "ANSI/AWC NDS National Design Specification for Wood Construction", "American Wood Council", "2018", FromMemory;
    "F1" "Applications Manual for the Revised NIOSH Lifting Equation, Pub. 94-110 (revised 9/2021)", "NIOSH (Waters, Putz-Anderson, Garg)", "1994, 2021", InPart;
    "F2" "Worked lifting example, 12 kg load (homework page)", "homeworksource.com", "undated", Read;
    "F3" "Wood dust: evaluating exposure", "US OSHA", "c. 2013", Read;
    "F4" "Mount framed pictures and mirrors securely", "US FEMA", "2008", Read;
    "F5" "Secure your hanging objects", "Earthquake Country Alliance", "undated", Read;
    "C1" "The CIEDE2000 color-difference formula: implementation notes, supplementary test data (Sharma, Wu, Dalal), Color Research & Application 30(1) 21-30, Table 1", "Wiley", "2005", SecondHand;
    "C3" "colour-science 0.4.7 (Python)", "colour-science.org", "2025", Read;
    "C4" "ISO 216 / ISO 269 paper sizes", "ISO", "2007", FromMemory;
    "C5" "ASME Y14.1 drawing sheet sizes", "ASME", "2020", FromMemory;
}
