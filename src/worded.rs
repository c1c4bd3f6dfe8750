//! Enums whose variants have words of their own: variant and word in one row, and the function that says them.

/// An enum with a word for each variant, and the function by which it says it; with two words, two functions.
macro_rules! worded {
    (
        $(#[$of:meta])* $vis:vis enum $name:ident { $($(#[$about:meta])* $variant:ident => $word:literal;)* }
        $(#[$doc:meta])* $seen:vis fn $function:ident;
    ) => {
        $(#[$of])*
        $vis enum $name {
            $($(#[$about])* $variant,)*
        }

        impl $name {
            $(#[$doc])*
            $seen const fn $function(self) -> &'static str {
                match self {
                    $(Self::$variant => $word,)*
                }
            }
        }
    };
    (
        $(#[$of:meta])* $vis:vis enum $name:ident { $($(#[$about:meta])* $variant:ident => $word:literal, $other:literal;)* }
        $(#[$doc:meta])* $seen:vis fn $function:ident;
        $(#[$second_doc:meta])* $second_seen:vis fn $second:ident;
    ) => {
        worded! {
            $(#[$of])* $vis enum $name { $($(#[$about])* $variant => $word;)* }
            $(#[$doc])* $seen fn $function;
        }

        impl $name {
            $(#[$second_doc])*
            $second_seen const fn $second(self) -> &'static str {
                match self {
                    $(Self::$variant => $other,)*
                }
            }
        }
    };
}
