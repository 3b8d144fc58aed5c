//! A formula's right-hand side.

use super::quantity::Quantity;
use super::token::Sign;

/// An expression.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Expression {
    Literal(Quantity),
    Name(String),
    Negative(Box<Expression>),
    Pair(Sign, Box<Expression>, Box<Expression>),
    Call(Function, Vec<Expression>),
}

impl Expression {
    /// Whether `name` appears anywhere in it.
    pub(crate) fn mentions(&self, name: &str) -> bool {
        match self {
            Self::Literal(_) => false,
            Self::Name(own) => own == name,
            Self::Negative(inside) => inside.mentions(name),
            Self::Pair(_, left, right) => left.mentions(name) || right.mentions(name),
            Self::Call(_, arguments) => arguments.iter().any(|argument| argument.mentions(name)),
        }
    }
}

macro_rules! functions {
    ($($variant:ident $name:literal $arguments:expr, $words:literal;)*) => {
        /// A function of the language.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub(crate) enum Function {
            $(#[doc = $words] $variant),*
        }

        impl Function {
            /// The function of this name.
            pub(crate) fn named(name: &str) -> Option<Self> {
                match name {
                    $($name => Some(Self::$variant),)*
                    _ => None,
                }
            }

            /// As it is written.
            pub(crate) const fn name(self) -> &'static str {
                match self { $(Self::$variant => $name),* }
            }

            /// How many arguments it takes; `None` is any number from one.
            pub(crate) const fn arguments(self) -> Option<usize> {
                match self { $(Self::$variant => $arguments),* }
            }
        }
    };
}

functions! {
    Sum "sum" None, "All values recorded under the names, added up.";
    Count "count" None, "How many values are recorded under the names.";
    Max "max" None, "The largest of all values of all arguments.";
    Min "min" None, "The smallest of all values of all arguments.";
    UpTo "up_to" Some(2), "The next multiple of the step, not below.";
    DownTo "down_to" Some(2), "The next multiple of the step, not above.";
    NearestTo "nearest_to" Some(2), "The nearest multiple of the step, halves away from zero.";
    RoundTo "round_to" Some(3), "A multiple of the step, rounded the way that is given.";
    Up "up" Some(1), "The next whole quantum or whole number, not below.";
    Down "down" Some(1), "The next whole quantum or whole number, not above.";
    Nearest "nearest" Some(1), "The nearest whole quantum or whole number, halves away from zero.";
    HalfDown "half_down" Some(1), "Half, down to a whole quantum or whole number.";
    Tan "tan" Some(1), "Tangent of an angle.";
    Sin "sin" Some(1), "Sine of an angle.";
    Cos "cos" Some(1), "Cosine of an angle.";
    Atan "atan" Some(1), "The angle with this tangent.";
    Asin "asin" Some(1), "The angle with this sine.";
    Sqrt "sqrt" Some(1), "Square root.";
    Exp "exp" Some(1), "The number e to this power.";
    Ln "ln" Some(1), "Natural logarithm.";
    If "if" Some(3), "The second argument where the first holds, else the third.";
    Abs "abs" Some(1), "Without its sign.";
    Not "not" Some(1), "No for yes, yes for no.";
}

impl Function {
    /// Whether its arguments are names only, each standing for all values recorded under it.
    pub(crate) const fn takes_names(self) -> bool {
        matches!(self, Self::Sum | Self::Count)
    }
}
