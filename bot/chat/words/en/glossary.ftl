command-define = what a word means
define-what = Type the word behind it, like this: */define numerator*
define-example = For example: { $example }
define-lesson = From the lesson *{ $title }*.
define-in-lessons = { $term } (in the lessons: { $english })
define-near = “{ $word }” isn’t a word of this course. Did you mean one of these?
define-unknown = “{ $word }” isn’t a word of this course. Is it spelt another way? Your tutor may know it too.
not-for-you-in-test = Words can be looked up once the test is handed in. Do what you can without, that’s fine.
